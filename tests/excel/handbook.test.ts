import { readFileSync } from 'node:fs';
import path from 'node:path';
import { catalogue } from '../../src/sheet/catalogue';
import { handbookContent } from '../../src/sheet/handbook/content';
import { handbookMarkdown } from '../../src/sheet/handbook/markdown';
import { handbookPage } from '../../src/sheet/handbook/page';
import { worked } from '../../src/sheet/handbook/worked';
import { customFunctionsMetadata } from '../../src/sheet/metadata/custom-functions';

const families = handbookContent(catalogue, worked);
const functions = families.flatMap(({ declarations }) => declarations.flatMap((declaration) => declaration.functions));

test('every function stands in it once', () => {
  expect(functions.map(({ name }) => name).sort()).toEqual(catalogue.entries.map(({ member }) => member.name).sort());
});

test('a function shows purpose, arguments with unit, bounds and default, formula, source and caution', () => {
  const page = handbookMarkdown(families);
  const section = page.slice(page.indexOf('### CABLE_WITHSTAND\n'), page.indexOf('### CABLE_WITHSTAND_CURRENT'));
  for (const line of [
    'Joule integral that a conductor withstands without passing its final temperature.',
    '`JW.CABLE_WITHSTAND(k, csa_mm2, [runs])` gives A²s.',
    'Formula: (k·S·n)²',
    '| `csa_mm2` | conductor cross-section | above 0, up to 3000 mm² | needed |',
    '| `runs` | conductors in parallel for each line | whole number, 1 to 24 | 1 |',
    'Source: IEC 60364-4-43:2023, 434.5.2',
    '=JW.CABLE_WITHSTAND(115,25)  →  8265625',
  ]) expect(section).toContain(`${line}\n`);
  expect(section).toMatch(/^Caution: Adiabatic/m);
});

test('words are listed with their synonyms', () => {
  const { arguments: list } = functions.find(({ name }) => name === 'CABLE_K')!;
  expect(Array.isArray(list) && list[0]).toMatchObject({ name: 'metal', takes: 'copper (cu) · aluminium (al, aluminum)' });
});

const examples = families.flatMap(({ declarations }) => declarations.flatMap((declaration) => declaration.examples)).map(({ formula, answer }) => [formula, answer] as const);
test.each(examples)('%s can be worked', (_formula, answer) => {
  expect(answer).not.toMatch(/#UNSUPPORTED!|#NAME\?|#CALC!|NaN|Infinity|undefined|internal fault/);
  expect(answer).not.toBe('');
});

test('its page has an anchor for every function, and Excel’s help leads there', () => {
  const page = handbookPage(families);
  for (const { id, helpUrl } of customFunctionsMetadata(catalogue).functions) {
    expect(helpUrl).toBe(`https://localhost:3000/handbook.html#${id}`);
    expect(page).toContain(`<h3 id="${id}">`);
  }
  expect(page).not.toMatch(/<script|style=|<style|onerror/);
});

test('the committed pages are what the declarations say', () => {
  const read = (file: string): string => readFileSync(path.resolve(__dirname, '../..', file), 'utf8');
  expect(read('docs/handbook.md')).toBe(handbookMarkdown(families));
  expect(read('src/excel/generated/handbook.html')).toBe(handbookPage(families));
});
