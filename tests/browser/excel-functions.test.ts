import { readFileSync } from 'node:fs';
import path from 'node:path';
import { gzipSync } from 'node:zlib';
import type { Page } from 'playwright-core';
import reference from '../fixtures/reference-functions.json';
import type { Argument, Cell, Matrix } from '../../src/functions/kernel/cell';
import { call, plainHost } from '../../src/functions/kernel/call';
import { catalogue } from '../../src/sheet/catalogue';
import { compile, emptyWorkbook, evaluate } from '../../src/sheet/evaluate';
import { sameValue } from '../../src/sheet/explain/agreement';
import { valueOf } from '../support/evaluate';
import { type ExcelPage, excelFolder, handedOver, openExcelPage } from '../support/excel-page';

/** The functions bundle in Chromium with Microsoft's own runtime: every function is called through what was associated. */

jest.setTimeout(30_000);

let excel: ExcelPage;
let page: Page;

/** What the page reports of a call: what would go to Excel as JSON, or the error that was thrown. */
interface Report {
  /** The value as Excel receives it, after JSON. */
  value?: unknown;
  error?: { code: string; message: string; known: boolean };
  /** Something in it that JSON has no word for. */
  unsound: boolean;
}
interface Request {
  id: string;
  handed: unknown[];
}

beforeAll(async () => {
  excel = await openExcelPage(`window.answers = ${answers.toString()}`);
  ({ page } = excel);
}, 120_000);

afterAll(() => excel?.close());

/** Inside the page: calls functions as Microsoft's runtime does, positional values, the invocation object last, JSON on the way out. */
function answers(list: readonly Request[]): Report[] {
  const { CustomFunctions } = window as unknown as {
    CustomFunctions: { _association: { mappings: Record<string, (...handed: unknown[]) => unknown> }; Error: new (code: string) => Error & { code: string } };
  };
  const revived = (value: unknown): unknown => {
    if (Array.isArray(value)) return value.map(revived);
    if (typeof value !== 'object' || value === null) return value;
    if ('special' in value) return { NaN: NaN, Infinity: Infinity, undefined: undefined, long: 'é'.repeat(40_000) }[String(value.special)];
    return 'thrown' in value ? new CustomFunctions.Error(String(value.thrown)) : value;
  };
  const sound = (value: unknown): boolean =>
    Array.isArray(value) ? value.every(sound) : value instanceof CustomFunctions.Error || ['string', 'boolean'].includes(typeof value) || (typeof value === 'number' && Number.isFinite(value));
  return list.map(({ id, handed }) => {
    try {
      const value = CustomFunctions._association.mappings[id]!.apply(null, [...handed.map(revived), { functionName: id, address: 'Sheet1!A1' }]);
      return { value: JSON.parse(JSON.stringify(value) ?? 'null'), unsound: !sound(value) };
    } catch (thrown) {
      const error = thrown as Error & { code: string };
      return { error: { code: error.code, message: error.message, known: error instanceof CustomFunctions.Error }, unsound: false };
    }
  });
}

/** Inside the page: every list of values for every function; only what is not sound comes back. */
function hostileCalls({ lists, values }: { lists: { id: string; lists: number[][] }[]; values: readonly unknown[] }): { calls: number; errors: number; bad: unknown[] } {
  const { answers: ask } = window as unknown as { answers: typeof answers };
  const requests = lists.flatMap(({ id, lists: places }) => places.map((list) => ({ id, handed: list.map((place) => values[place]) })));
  const reports = ask(requests);
  const bad = reports.flatMap((report, i) => {
    const text = JSON.stringify(report.value ?? report.error?.message ?? null);
    const words = text.replace(/\\"[^"]*\\"/g, '');
    const fault = report.unsound || (report.error ? !report.error.known : text === 'null') || /internal fault|undefined|\bNaN\b(?!")|\[object|at .+\.js/.test(words);
    return fault ? [{ ...requests[i]!, report }] : [];
  });
  return { calls: reports.length, errors: reports.filter(({ error }) => error).length, bad };
}

const inExcel = (requests: readonly Request[]): Promise<Report[]> =>
  page.evaluate((list) => (window as unknown as { answers: typeof answers }).answers(list), requests as Request[]);

/** The outermost call of a formula with its arguments worked out. */
function outermost(formula: string): Request | undefined {
  let last: { id: string; argv: readonly Argument[] } | undefined;
  let calls = 0;
  const functions = {
    find: (name: string) => {
      const entry = catalogue.find(name);
      return entry && ((argv: Argument[]) => {
        calls += 1;
        last = { id: entry.member.name, argv };
        return call(catalogue, entry, argv, plainHost).value;
      });
    },
  };
  evaluate(compile(formula.replace(/^=/, '')), { workbook: emptyWorkbook, functions, sheet: '', row: 0, column: 0 });
  const first = catalogue.find(/^=(JW\.\w+)\(/.exec(formula)?.[1] ?? '')?.member.name;
  if (!last || calls === 0 || last.id !== first || !formula.endsWith(')')) return undefined;
  return { id: last.id, handed: handedOver(last.id, last.argv) };
}

test('the bundle is small and holds neither evaluator nor pane', () => {
  const bundle = readFileSync(path.join(excelFolder, 'functions.js'));
  expect(gzipSync(bundle).length).toBeLessThanOrEqual(90_000);
  const sources = (JSON.parse(readFileSync(path.join(excelFolder, 'functions.js.map'), 'utf8')) as { sources: string[] }).sources.join('\n');
  expect(sources).not.toMatch(/src\/sheet\/evaluate|src\/pane|@borgar|numfmt|formulajs/);
});

test('every function of the catalogue is associated, and no other', async () => {
  const ids = await page.evaluate(() => Object.keys((window as unknown as { CustomFunctions: { _association: { mappings: object } } }).CustomFunctions._association.mappings));
  const metadata = JSON.parse(readFileSync(path.join(excelFolder, 'functions.json'), 'utf8')) as { functions: { id: string }[] };
  expect(ids.sort()).toEqual(catalogue.entries.map(({ member }) => member.name).sort());
  expect(ids.sort()).toEqual(metadata.functions.map(({ id }) => id).sort());
});

type Figure = Cell | Matrix | { error: string; message?: string };

/** Where the reference records less, or stands a small step beside a break point, the same core outside Excel is the measure. */
const OWN_MEASURE = /^=JW\.(?:SHOW_STEPS|CORE_VERSION|SELECT_RANGES)\(/;
const expectedOf = ({ formula, value }: { formula: string; value: Figure }): Figure => (OWN_MEASURE.test(formula) ? valueOf(formula) : value);

test('check figures come out as the reference calculation printed them', async () => {
  const checks = reference.declarations.flatMap((declaration) => declaration.checks as { formula: string; value: Figure }[]).filter(({ formula }) => catalogue.find(/JW\.(\w+)/.exec(formula)?.[1] ?? ''));
  const requests = checks.flatMap((check) => {
    const request = outermost(check.formula);
    return request ? [{ check, request }] : [];
  });
  expect(requests.length).toBeGreaterThan(checks.length * 0.9);
  const reports = await inExcel(requests.map(({ request }) => request));
  const wrong: unknown[] = [];
  let zeroes = 0;
  reports.forEach((report, i) => {
    const { check } = requests[i]!;
    const { formula } = check;
    const expected = expectedOf(check);
    // A bare 0 may be a blank cell in Excel: where 0 has a meaning of its own it is refused, and text is asked for.
    if (report.error?.code === '#VALUE!' && /blank or zero/.test(report.error.message) && /[(,]0[,)]/.test(formula)) return void (zeroes += 1);
    const error = typeof expected === 'object' && expected !== null && 'error' in expected ? expected : undefined;
    const right = error
      ? report.error?.known && report.error.code === error.error && (error.error === '#NUM!' ? report.error.message === '' : report.error.message !== '')
      : report.error === undefined && !report.unsound && sameValue(report.value as Cell | Matrix, expected as Cell | Matrix);
    if (!right) wrong.push({ formula, expected, report });
  });
  expect(wrong).toEqual([]);
  expect(zeroes).toBeLessThan(checks.length * 0.1);
});

/** Values that a sheet may hold where it should not. */
const HOSTILE: readonly unknown[] = [
  null, 0, -1, 1, 5e-324, 1e308, -1e308, '', ' ', 'x', '0', '1e999', '-3 kA', '63 kg', '1,5', '1+2i', '-1-2i', 'NaN', 'Infinity', 'TRUE', true, false, '\u0000', '=1+1',
  { special: 'NaN' }, { special: 'Infinity' }, { special: 'undefined' }, { special: 'long' }, { thrown: '#N/A' }, { thrown: '#REF!' }, { type: 'Error', basicType: 'Error', basicValue: '#DIV/0!' },
  { type: 'Empty', basicType: 'Empty', basicValue: '' }, { type: 'Double', basicType: 'Double', basicValue: 3, numberFormat: '0' }, { type: 'Entity', text: 't', properties: {} },
  [], [[]], [[null]], [[0, 0], [0, 0]], [[1, 2], [3, 4]], [['a', 'b'], [1, 2]], [[{ special: 'NaN' }, 1]], [[1], [2], [3]], [[{ thrown: '#NUM!' }]], [['x'], ['']], [[1, null], [null, null]],
];

test('whatever a sheet holds, nothing but sound values and errors with reasons comes back', async () => {
  let seed = 1;
  const random = (below: number): number => (seed = (seed * 48271) % 2147483647) % below;
  const lists = catalogue.entries.map(({ member }) => {
    const count = Object.keys(member.parameters).length;
    const same = HOSTILE.map((_, value) => Array.from({ length: count }, () => value));
    const mixed = Array.from({ length: 60 }, () => Array.from({ length: random(count + 2) }, () => random(HOSTILE.length)));
    return { id: member.name, lists: [...same, ...mixed] };
  });
  const { calls, errors, bad } = await page.evaluate(hostileCalls, { lists, values: HOSTILE });
  expect(bad).toEqual([]);
  expect(calls).toBeGreaterThan(catalogue.entries.length * 100);
  expect(errors).toBeGreaterThan(calls / 2);
}, 60_000);

test('messages survive Microsoft’s own error class for #VALUE! and #N/A, and #NUM! goes without', async () => {
  const [missing, unit, limit, passed] = await inExcel([
    { id: 'CABLE_WITHSTAND', handed: [115, null, null] },
    { id: 'CABLE_WITHSTAND', handed: [115, '185 kg', null] },
    { id: 'CABLE_WITHSTAND', handed: [115, 1e9, null] },
    { id: 'CABLE_WITHSTAND', handed: [115, { thrown: '#REF!' }, null] },
  ]);
  expect(missing!.error).toEqual({ code: '#N/A', message: 'missing: csa_mm2', known: true });
  expect(unit!.error).toEqual({ code: '#VALUE!', message: 'csa_mm2: got "185 kg": kg is not a unit known here, takes mm²', known: true });
  expect(limit!.error).toEqual({ code: '#NUM!', message: '', known: true });
  expect(passed!.error).toEqual({ code: '#VALUE!', message: '#REF! in an argument', known: true });
});

test('a blank that arrives as 0 is never a figure', async () => {
  const [impedance, list, current] = await inExcel([
    { id: 'FAULT_3PH_MAX', handed: [[[0]], 415, null] },
    { id: 'IMP_SERIES', handed: [[[['1+1i'], [0]]]] },
    { id: 'CABLE_WITHSTAND', handed: [115, 0, null] },
  ]);
  expect(impedance!.error).toMatchObject({ code: '#VALUE!', message: 'z_mohm is blank or zero: write 0 as text' });
  expect(list!.error).toMatchObject({ code: '#VALUE!', message: expect.stringMatching(/blank or zero: write 0 as text/) });
  expect(current!.error).toMatchObject({ code: '#VALUE!', message: 'csa_mm2: is blank or zero, takes above 0, up to 3000 mm²' });
  const [zero] = await inExcel([{ id: 'FAULT_3PH_MAX', handed: [[['0.8', '0']], 415, null] }]);
  expect(zero!.error).toBeUndefined();
});
