import { readFileSync } from 'node:fs';
import path from 'node:path';
import { parseHTML } from 'linkedom';
import { clauseOf } from '../../src/functions/kernel/explain';
import { CellError, type Cell, type Matrix } from '../../src/functions/kernel/cell';
import { catalogue } from '../../src/sheet/catalogue';
import { handbookContent } from '../../src/sheet/handbook/content';
import { handbookMarkdown } from '../../src/sheet/handbook/markdown';
import { handbookPage } from '../../src/sheet/handbook/page';
import { worked } from '../../src/sheet/handbook/worked';
import { argumentFacts } from '../../src/sheet/metadata/argument-facts';
import { customFunctionsMetadata } from '../../src/sheet/metadata/custom-functions';
import { roundedCell } from '../../src/sheet/rounded-cell';
import { valueOf } from '../support/evaluate';

const families = handbookContent(catalogue, worked);
const markdown = handbookMarkdown(families);
const page = handbookPage(families);
const { document } = parseHTML(page);
const functions = families.flatMap(({ declarations }) => declarations.flatMap((declaration) => declaration.functions));
const texts = (root: ParentNode, selector: string): string[] => [...root.querySelectorAll(selector)].map((each) => each.textContent!);

test('every function stands in it once', () => {
  const names = catalogue.entries.map(({ member }) => member.name).sort();
  expect(functions.map(({ name }) => name).sort()).toEqual(names);
  expect(texts(document, 'h3').sort()).toEqual(names);
  expect([...markdown.matchAll(/^### (.*)$/gm)].map(([, name]) => name).sort()).toEqual(names);
});

test.each(catalogue.entries.map((entry) => [entry.member.name, entry] as const))('%s: purpose, arguments with bounds and defaults, formula, source and caution stand on the page and in the Markdown', (name, { declaration, member }) => {
  const section = document.getElementById(name)!.closest('section')!;
  const start = markdown.indexOf(`### ${declaration.members[0]!.name}\n`);
  const rest = markdown.indexOf(`Source: ${clauseOf(declaration)}`, start);
  const written = markdown.slice(start, rest).replace(/\\\|/g, '|');
  expect(rest).toBeGreaterThan(start);
  const shown = texts(section, 'p, .formula, .arguments th, .arguments td, .facts dd');
  for (const words of [member.summary, member.formula, clauseOf(declaration), declaration.caution, declaration.tasks.join('; ')].filter((each) => each !== '')) expect(shown).toContain(words);
  expect(written).toContain(`### ${name}\n\n${member.summary}\n`);
  if (member.formula !== '') expect(written).toContain(`\nFormula: ${member.formula}\n`);
  if (declaration.caution !== '') expect(markdown.slice(rest, rest + 2000)).toContain(`\nCaution: ${declaration.caution}\n`);
  if (declaration.tasks.length > 0) expect(markdown.slice(rest, rest + 2000)).toContain(`\nAsked for as: ${declaration.tasks.join('; ')}\n`);
  for (const [argument, kind] of Object.entries(member.parameters)) {
    const { about, takes, leftOut } = argumentFacts(kind);
    expect(shown).toEqual(expect.arrayContaining([argument, about, takes, leftOut || 'needed']));
    expect(written).toContain(`| \`${argument}\` | ${about} | ${takes} | ${leftOut || 'needed'} |`);
  }
});

test('one of them in full, as it is read', () => {
  const section = markdown.slice(markdown.indexOf('### CABLE_WITHSTAND\n'), markdown.indexOf('### CABLE_WITHSTAND_CURRENT'));
  for (const line of [
    'Joule integral that a conductor withstands without passing its final temperature.',
    '`JW.CABLE_WITHSTAND(k, csa_mm2, [runs])` gives A²s.',
    'Formula: (k·S·n)²',
    '| `csa_mm2` | conductor cross-section | above 0, up to 3000 mm² | needed |',
    '| `runs` | conductors in parallel for each line | whole number, 1 to 24 | 1 |',
    'Source: IEC 60364-4-43:2023, 434.5.2',
    '=JW.CABLE_WITHSTAND(115,25)  →  8265625',
    '  caution: even sharing taken: a fault inside one run loads that run alone',
    'Working of `=JW.CABLE_WITHSTAND(115,25)`: k 115, csa_mm2 25 mm², runs 1. Defaults: runs=1.',
    '| k²S² = (k·S·n)² | k 115 A√s/mm², S 25 mm², n 1 | 8.26563E+06 A²s |',
    '| `CABLE_WITHSTAND` |  | 8.265625E+06 A²s |',
  ]) expect(section).toContain(`${line}\n`);
  expect(section).toMatch(/^Caution: Adiabatic/m);
});

test('words are listed with their synonyms', () => {
  const { arguments: list } = functions.find(({ name }) => name === 'CABLE_K')!;
  expect(Array.isArray(list) && list[0]).toMatchObject({ name: 'metal', takes: 'copper (cu) · aluminium (al, aluminum)' });
});

describe('examples', () => {
  const declared = catalogue.declarations.flatMap(({ examples }) => examples);
  const shown = new Map([...document.querySelectorAll('.examples dt')].map((term) => [term.textContent!, term.nextElementSibling!]));

  const cellText = (cell: Cell): string => {
    if (cell instanceof CellError) return [cell.code, cell.message].filter((part) => part !== '').join(' ');
    return roundedCell(cell, 7) || '(empty)';
  };
  const rowsOf = (value: Cell | Matrix): string[][] => (Array.isArray(value) ? value : [[value]]).map((row) => row.map(cellText));

  test.each(declared)('%s has the answer of the evaluator', (formula) => {
    const definition = shown.get(formula)!;
    const answer = definition.querySelector('.answer');
    const rows = answer ? [[answer.textContent]] : [...definition.querySelectorAll('.spill tr')].map((row) => texts(row, 'td'));
    const value = rowsOf(valueOf(formula));
    expect(rows).toEqual(value);
    expect(markdown).toContain(answer ? `\n${formula}  →  ${value[0]![0]}\n` : `\n${formula}\n${value.map((row) => `  ${row.join(' | ')}\n`).join('')}`);
    expect(rows.flat().join(' ')).not.toMatch(/#UNSUPPORTED!|#NAME\?|#CALC!|NaN|Infinity|undefined|internal fault/);
  });

  const workings = families.flatMap(({ declarations }) => declarations.flatMap(({ examples }) => examples)).flatMap(({ formula, working }) => (working ? [{ formula, ...working }] : []));

  test.each(workings.map((each) => [each.formula, each] as const))('the working of %s is that of SHOW_STEPS', (formula, { name, given, steps }) => {
    const table = valueOf(formula.replace(`=JW.${name}(`, `=JW.SHOW_STEPS("${name}",`)) as Matrix;
    expect(table.slice(1, -1)).toEqual([...given.map((each) => [each.name, each.text]), ...steps.map(({ step, value }) => [step, value])]);
    const rows = [...shown.get(formula)!.querySelectorAll('.working tbody tr')].map((row) => [...row.children].map((cell) => cell.textContent));
    expect(rows.slice(0, -1)).toEqual(steps.map(({ step, inputs, value }) => [`${step}${inputs}`, value]));
  });

  /** Looked up, counted or put in words: no formula is worked on the way. */
  const WITHOUT_STEPS = ['NET_CHECK', 'CURVE_CHECK', 'AGREE_HINT', 'SHOW_WORKING', 'CLAUSE', 'ASSUMED', 'CAUTION', 'VALID_RANGE', 'VERDICT_COUNT', 'CHECK_DIGEST', 'CORE_VERSION'];
  /** Tables whose steps are those of their one-cell partner, or one row each. */
  const TABLES = ['NET_PROFILE', 'AGREE_LIST'];

  test('every declaration shows a working, save those that work nothing', () => {
    const named = new Set(workings.map(({ name }) => name));
    const without = catalogue.declarations.filter(({ members }) => !members.some(({ name }) => named.has(name))).map(({ members }) => members[0]!.name);
    expect(without.sort()).toEqual([...WITHOUT_STEPS, ...TABLES].sort());
  });
});

test('its page has an anchor for every function, and Excel’s help leads there', () => {
  for (const { id, helpUrl } of customFunctionsMetadata(catalogue).functions) {
    expect(helpUrl).toBe(`https://localhost:3000/handbook.html#${id}`);
    expect(document.getElementById(id)?.localName).toBe('h3');
  }
  for (const link of document.querySelectorAll('a')) expect(document.getElementById(link.getAttribute('href')!.slice(1))).not.toBeNull();
  const ids = [...document.querySelectorAll('[id]')].map(({ id }) => id);
  expect(new Set(ids).size).toBe(ids.length);
});

test('its page names only files beside it, and no script or style stands in it', () => {
  const policy = document.querySelector('meta[http-equiv=Content-Security-Policy]')!.getAttribute('content');
  expect(policy).toBe("default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; base-uri 'none'; form-action 'none'");
  expect([...document.querySelectorAll('script, link')].map((each) => each.getAttribute('src') ?? each.getAttribute('href'))).toEqual(['assets/icon-16.png', 'handbook.css', 'handbook.js']);
  expect(document.querySelector('script')!.textContent).toBe('');
  expect(page).not.toMatch(/ style=|<style| on[a-z]+=|https?:/);
});

test('the committed pages are what the declarations say', () => {
  const read = (file: string): string => readFileSync(path.resolve(__dirname, '../..', file), 'utf8');
  expect(read('docs/handbook.md')).toBe(markdown);
  expect(read('src/sheet/handbook/generated/handbook.html')).toBe(page);
});
