import { CellError } from '../../src/functions/kernel/cell';
import { catalogueOf, isOurName } from '../../src/functions/kernel/catalogue';
import { call, faultsOf, plainHost } from '../../src/functions/kernel/call';
import { worksheetFunction } from '../../src/functions/kernel/declaration';
import { kind } from '../../src/functions/kernel/kind';
import { flag } from '../../src/functions/kernel/kinds';
import { catalogue } from '../../src/sheet/catalogue';
import { outcomeOf, run } from '../support/run';

const refusal = (code: string, message: string) => new CellError(code as CellError['code'], message);

describe('reading arguments', () => {
  test('a blank needed argument is missing, never zero', () => {
    for (const blank of [null, undefined, '', '   ']) expect(run('CABLE_WITHSTAND', 115, blank)).toEqual(refusal('#N/A', 'missing: csa_mm2'));
  });
  test('text with a unit of the same kind is converted', () => {
    expect(run('CABLE_WITHSTAND', 115, '25 mm²')).toBe((115 * 25) ** 2);
    expect(run('CABLE_WITHSTAND', 115, '0.25 cm2')).toBe((115 * 25) ** 2);
    expect(run('CABLE_WITHSTAND_CURRENT', 115, '25', '400 ms')).toBeCloseTo((115 * 25) / Math.sqrt(0.4) / 1000, 12);
  });
  test('a unit of another kind names both units', () => {
    expect(run('CABLE_WITHSTAND', 115, '185 kg')).toEqual(refusal('#VALUE!', 'csa_mm2: got "185 kg": kg is not a unit known here, takes mm²'));
    expect(run('CABLE_WITHSTAND', 115, '63 kA')).toEqual(refusal('#VALUE!', 'csa_mm2: got "63 kA": kA is current, takes mm²'));
  });
  test.each([
    [-5, '#VALUE!', 'csa_mm2: got -5, takes above 0, up to 3000 mm²'],
    [0, '#VALUE!', 'csa_mm2: got 0, takes above 0, up to 3000 mm²'],
    [1e9, '#NUM!', 'csa_mm2: 1000000000 is outside above 0, up to 3000 mm²'],
    ['thick', '#VALUE!', 'csa_mm2: got "thick", takes a number in mm²'],
    ['1,5', '#VALUE!', 'csa_mm2: got "1,5", takes one number with a decimal point and no thousands marks'],
    [true, '#VALUE!', 'csa_mm2: got TRUE, takes a number in mm²'],
    [[[16, 25]], '#VALUE!', 'csa_mm2: got a range of 2 cells, takes one cell'],
  ])('csa_mm2 = %p is refused', (value, code, message) => {
    expect(run('CABLE_WITHSTAND', 115, value as never)).toEqual(refusal(code as string, message as string));
  });
  test('a single-cell range is its cell; an error cell passes through as it is', () => {
    expect(run('CABLE_WITHSTAND', 115, [[25]])).toBe((115 * 25) ** 2);
    const error = new CellError('#DIV/0!');
    expect(run('CABLE_WITHSTAND', 115, error)).toBe(error);
  });
  test('counts are whole', () => {
    expect(run('CABLE_WITHSTAND', 115, 25, 1.5)).toEqual(refusal('#VALUE!', 'runs: got 1.5, takes a whole number, 1 to 24'));
    expect(run('CABLE_WITHSTAND', 115, 25, 25)).toEqual(refusal('#NUM!', 'runs: 25 is outside 1 to 24'));
  });
  test('too many arguments are refused', () => {
    expect(run('CABLE_WITHSTAND', 115, 25, 1, 1)).toEqual(refusal('#VALUE!', 'CABLE_WITHSTAND takes 3 arguments, got 4'));
  });
  test('where a blank arrives as zero the message says so', () => {
    expect(outcomeOf('CABLE_WITHSTAND', [115, 0], { blankArrivesAsZero: true }).value).toEqual(refusal('#VALUE!', 'csa_mm2: is blank or zero, takes above 0, up to 3000 mm²'));
    expect(outcomeOf('AGREE', [0, 5, 1], { blankArrivesAsZero: true }).value).toEqual(refusal('#VALUE!', 'designer is blank or zero: write 0 as text'));
  });
});

describe('questions about a call', () => {
  test('working, steps, defaults, clause, cautions', () => {
    expect(run('SHOW_WORKING', 'JW.cable_withstand', 115, 25)).toBe('(k·S·n)²; k 115, csa_mm2 25 mm², runs 1; 8.266E+06 A²s');
    expect(run('SHOW_STEPS', 'CABLE_WITHSTAND', 115, 25)).toEqual([
      ['step', 'value'], ['k', '115'], ['csa_mm2', '25 mm²'], ['runs', '1'], ['k²S² = (k·S·n)²', '8.26563E+06 A²s'], ['CABLE_WITHSTAND', 8265625],
    ]);
    expect(run('ASSUMED', 'CABLE_WITHSTAND', 115, 25)).toBe('runs=1');
    expect(run('CLAUSE', 'CABLE_WITHSTAND')).toBe('IEC 60364-4-43:2023, 434.5.2');
    expect(run('CAUTION', 'CABLE_WITHSTAND', 115, '')).toBe('input: missing: csa_mm2');
    expect(run('CAUTION', 'CABLE_WITHSTAND', 115, 25, 2)).toBe('even sharing taken: a fault inside one run loads that run alone');
    expect(run('CLAUSE', 'CABLE_STRENGTH')).toEqual(refusal('#VALUE!', 'function_name: no function named CABLE_STRENGTH'));
    expect(run('CLAUSE', 'A'.repeat(5000))).toEqual(refusal('#VALUE!', `function_name: no function named ${'A'.repeat(37)}…`));
  });
  test('an error in the asked call is its own answer', () => {
    expect(run('SHOW_WORKING', 'CABLE_WITHSTAND', 115, '')).toEqual(refusal('#N/A', 'missing: csa_mm2'));
    expect(run('CAUTION', 'CABLE_WITHSTAND', 115, new CellError('#REF!'))).toBe('input: #REF!');
  });
});

describe('every fault of a call', () => {
  const faults = (...argv: Parameters<typeof outcomeOf>[1]) => faultsOf(catalogue.find('CABLE_WITHSTAND')!, argv, plainHost);
  test('each names its argument, an error cell among them; one too many belongs to none', () => {
    expect(faults(5, new CellError('#REF!'), 25, 1)).toEqual([
      { argument: 'k', words: 'k: 5 is outside 15 to 300 A√s/mm²' },
      { argument: 'csa_mm2', words: 'csa_mm2: #REF!' },
      { argument: 'runs', words: 'runs: 25 is outside 1 to 24' },
      { argument: '', words: 'CABLE_WITHSTAND takes 3 arguments, got 4' },
    ]);
    expect(faults('', 25)).toEqual([{ argument: 'k', words: 'missing: k' }]);
    expect(faults(115, 25)).toEqual([]);
  });
});

describe('what a cell shows', () => {
  test('no negative zero, and nothing beyond all numbers', () => {
    expect(run('UNIT_CONVERT', '-0', 'kA', 'A')).toBe(0);
    expect(run('UNIT_CONVERT', '1e308', 'kA', 'A')).toEqual(refusal('#NUM!', 'the result is not a finite number'));
  });
  test('a table without its headings only on demand', () => {
    const list = (headers: boolean) => run('AGREE_LIST', [[1], [5]], [[1], [2]], 2, '', headers) as unknown[][];
    expect(list(true)).toEqual([['row', 'designer', 'checker', 'difference %', 'finding'], ...list(false)]);
    expect(list(false).map((row) => row.slice(0, 4))).toEqual([[2, 5, 2, 150]]);
  });
});

/** Functions with a slip of ours in them. */
describe('a fault of ours', () => {
  const slip = (): never => {
    throw new TypeError('cannot read properties of nothing');
  };
  const careless = worksheetFunction({
    name: 'CARELESS', summary: '', formula: '', basis: [], examples: [], result: 'A', parameters: {}, compute: slip,
  });
  const misread = worksheetFunction({
    name: 'MISREAD', summary: '', formula: '', basis: [], examples: [], result: 'table', compute: () => ({ headings: ['a', 'b'], rows: [] }),
    parameters: { figure: kind<number, object>({ type: 'quantity', about: '', options: {}, read: slip, show: String }) },
  });
  const faulty = catalogueOf([[careless, misread].map((declaration) => ({ family: 'check', ...declaration }))]);
  test('is told without its stack, and is no fault of an argument', () => {
    for (const name of ['CARELESS', 'MISREAD']) {
      const outcome = call(faulty, faulty.find(name)!, name === 'MISREAD' ? ['x'] : []);
      expect(outcome.value).toEqual(refusal('#VALUE!', `internal fault in ${name}: no result; please report the call`));
    }
    expect(() => faultsOf(faulty.find('MISREAD')!, ['x'], plainHost)).toThrow(TypeError);
  });
});

test('a table without rows keeps its headings, or nothing would be shown', () => {
  const empty = worksheetFunction({
    name: 'EMPTY', summary: '', formula: '', basis: [], examples: [], result: 'table', parameters: { headers: flag('', { default: true }) }, compute: () => ({ headings: ['a', 'b'], rows: [] }),
  });
  const own = catalogueOf([[{ family: 'check', ...empty }]]);
  for (const headers of [true, false]) expect(call(own, own.find('EMPTY')!, [headers]).value).toEqual([['a', 'b']]);
});

test('a function is found by its name in any case, with either prefix, and with spaces about it', () => {
  for (const name of ['CABLE_WITHSTAND', 'jw.cable_withstand', ' JW.CABLE_WITHSTAND ', '_xldudf_JW_CABLE_WITHSTAND']) expect(catalogue.find(name)?.member.name).toBe('CABLE_WITHSTAND');
  expect(['JW.X', ' jw.X', '_xldudf_jw_x', 'JWX', 'X.JW.Y'].map(isOurName)).toEqual([true, true, true, false, false]);
});
