import { CellError, type Cell, type Matrix } from '../../src/functions/kernel/cell';
import { catalogue } from '../../src/sheet/catalogue';
import { outcomeOf, run } from '../support/run';

const refusal = (code: CellError['code'], message: string) => new CellError(code, message);
const column = (...cells: Cell[]): Matrix => cells.map((cell) => [cell]);
const cautionOf = (name: string, ...argv: Parameters<typeof outcomeOf>[1]) => outcomeOf(name, argv).cautions.join('; ');
/** A host that hands blanks over as zeros. */
const excel = { blankArrivesAsZero: true };

describe('LIMIT_TEST, LIMIT_MARGIN', () => {
  test('check figures', () => {
    expect(run('LIMIT_TEST', 0.31, 0.4)).toBe('pass');
    expect(run('LIMIT_MARGIN', 0.31, 0.4)).toBeCloseTo(29.0323, 4);
    expect(run('LIMIT_TEST', 4.2, 5, 'at least')).toBe('FAIL');
    expect(run('LIMIT_TEST', 0.31, '')).toBe('not shown');
    expect(run('LIMIT_MARGIN', 4.2, 5, 'at least')).toBeCloseTo(-16, 9);
  });
  test('an equality passes on both sides, whatever rounding does', () => {
    expect(run('LIMIT_TEST', 0.1 + 0.2, 0.3)).toBe('pass');
    expect(run('LIMIT_TEST', 0.3, 0.1 + 0.2, '>=')).toBe('pass');
    expect(run('LIMIT_TEST', 0.3000001, 0.3)).toBe('FAIL');
    expect(run('LIMIT_TEST', -5, -4)).toBe('pass');
    expect(run('LIMIT_TEST', 0, 0, 'min')).toBe('pass');
  });
  test('a blank is never zero', () => {
    expect(run('LIMIT_TEST', null, 0.4)).toEqual(refusal('#N/A', 'missing: value'));
    expect(run('LIMIT_MARGIN', 0.31, ' ')).toEqual(refusal('#N/A', 'missing: limit'));
    expect(cautionOf('LIMIT_TEST', 0.31, '')).toBe('missing: limit');
    expect(outcomeOf('LIMIT_TEST', [0, 5], excel).value).toEqual(refusal('#VALUE!', 'value is blank or zero: write 0 as text'));
    expect(outcomeOf('LIMIT_TEST', ['0', 5], excel).value).toBe('pass');
  });
  test('a bad value wins over a limit that is missing', () => {
    expect(run('LIMIT_TEST', 'high', '')).toEqual(refusal('#VALUE!', 'value: got "high", takes a number'));
    expect(run('LIMIT_TEST', 3, '', 'about')).toEqual(refusal('#VALUE!', 'sense: got "about", takes at most (<=, max) · at least (>=, min)'));
  });
  test('numbers only, and above 0 for a margin', () => {
    expect(run('LIMIT_TEST', '0.31 s', 0.4)).toEqual(refusal('#VALUE!', 'value: got "0.31 s", takes a number without a unit'));
    expect(run('LIMIT_MARGIN', 0, 0.4)).toEqual(refusal('#VALUE!', 'value: got 0, takes above 0'));
    expect(run('LIMIT_MARGIN', 2, -1)).toEqual(refusal('#VALUE!', 'limit: got -1, takes above 0'));
  });
});

describe('AGREE, AGREE_DIFFERENCE', () => {
  test('check figures', () => {
    expect(run('AGREE', 31.2, 31.5, 2)).toBe('agrees');
    expect(run('AGREE', 44.5, 31.5, 2)).toBe('DIFFERS +41.27 %');
    expect(run('AGREE', 'FAIL', 'fail', 0)).toBe('agrees');
    expect(run('AGREE', '2+9i', '2+8.5i', 2)).toBe('DIFFERS by 5.73 %');
    // |3 − (3+4i)|/|3+4i| = 4/5
    expect(run('AGREE', 3, '3+4i', 2)).toBe('DIFFERS by 80.00 %');
    expect(run('AGREE_DIFFERENCE', 3, '3+4i')).toBeCloseTo(80, 9);
    expect(run('AGREE', '', 31.5, 2)).toBe('one is missing');
    expect(run('AGREE_DIFFERENCE', 44.5, 31.5)).toBeCloseTo(41.2698, 4);
    expect(run('AGREE_DIFFERENCE', '2+9i', '2+8.5i')).toBeCloseTo(5.72598, 5);
  });
  test.each<[string, Cell, Cell, number, number | undefined, string]>([
    ['a smaller figure', 29.63, 31.5, 2, undefined, 'DIFFERS -5.94 %'],
    ['a limit is met to 1 part in 10⁹', 102, 100, 2, undefined, 'agrees'],
    ['floor where values are near nothing', 0.0004, 0.0001, 5, 0.0005, 'agrees'],
    ['a floor just reached', 0.31, 0.11, 0, 0.2, 'agrees'],
    ['a difference too small for two decimals is no "0.00"', 1.00001, 1, 0, undefined, 'DIFFERS +0.001 %'],
    ['zero on the checker’s side', 0.2, 0, 50, undefined, 'DIFFERS from zero'],
    ['zero on both', 0, 0, 0, undefined, 'agrees'],
    ['zero on the designer’s', 0, 5, 10, undefined, 'DIFFERS -100.00 %'],
    ['opposite signs', -5, 5, 10, undefined, 'DIFFERS -200.00 %'],
    ['words, case and spaces apart', ' not  Shown', 'NotShown', 0, undefined, 'agrees'],
    ['other words', 'pass', 'FAIL', 100, undefined, 'DIFFERS in words'],
    ['a word for a number', 'pass', 31.5, 100, undefined, 'DIFFERS in kind'],
    ['a number typed as text', '31.5', 31.5, 0, undefined, 'agrees'],
    ['an impedance against a resistance', '2+0i', 2, 0, undefined, 'agrees'],
    ['j for i', '2+9j', '2 + 9i', 0, undefined, 'agrees'],
    ['truth values', true, 'TRUE', 0, undefined, 'agrees'],
    ['figures beyond a per cent', 1e308, 1e-308, 0, undefined, 'DIFFERS beyond any per cent'],
    ['very large per cents keep few digits', 1e30, 1, 0, undefined, 'DIFFERS +1E+32 %'],
    ['both blank', null, ' ', 0, undefined, 'both are missing'],
    ['checker blank', 5, null, 0, undefined, 'one is missing'],
  ])('%s', (_about, designer, checker, tolerance, floor, finding) => {
    expect(run('AGREE', designer, checker, tolerance, floor)).toBe(finding);
  });
  test('an error in a cell is a finding', () => {
    expect(run('AGREE', new CellError('#REF!'), 5, 1)).toBe('error in a cell');
    expect(run('AGREE', null, new CellError('#N/A'), 1)).toBe('error in a cell');
  });
  test('tolerance is needed and bounded', () => {
    expect(run('AGREE', 5, 5, null)).toEqual(refusal('#N/A', 'missing: tolerance_pct'));
    expect(run('AGREE', 5, 5, -1)).toEqual(refusal('#VALUE!', 'tolerance_pct: got -1, takes 0 to 100 %'));
    expect(run('AGREE', 5, 5, 101)).toEqual(refusal('#NUM!', 'tolerance_pct: 101 is outside 0 to 100 %'));
    expect(run('AGREE', Infinity, 5, 1)).toEqual(refusal('#NUM!', 'designer: is not a finite number'));
  });
  test('AGREE_DIFFERENCE needs two quantities', () => {
    expect(run('AGREE_DIFFERENCE', '', 5)).toEqual(refusal('#N/A', 'missing: designer'));
    expect(run('AGREE_DIFFERENCE', 5, null)).toEqual(refusal('#N/A', 'missing: checker'));
    expect(run('AGREE_DIFFERENCE', 'pass', 5)).toEqual(refusal('#VALUE!', 'designer: got "pass", takes a number or an impedance'));
    expect(run('AGREE_DIFFERENCE', 5, true)).toEqual(refusal('#VALUE!', 'checker: got TRUE, takes a number or an impedance'));
    expect(run('AGREE_DIFFERENCE', 5, 0)).toEqual(refusal('#NUM!', 'checker: is zero, or nearly: no per cent of it can be stated'));
    expect(run('AGREE_DIFFERENCE', 5, '0+0i')).toEqual(refusal('#NUM!', 'checker: is zero, or nearly: no per cent of it can be stated'));
    const error = new CellError('#DIV/0!');
    expect(run('AGREE_DIFFERENCE', 5, error)).toBe(error);
  });
});

describe('AGREE_LIST', () => {
  const headings = ['row', 'designer', 'checker', 'difference %', 'finding'];
  test('check figures', () => {
    expect(run('AGREE_LIST', column(31.2, 44.5, 0.4), column(31.5, 31.5, 0.4), 2)).toEqual([
      headings, [2, 44.5, 31.5, expect.closeTo(41.2698, 4), 'DIFFERS +41.27 %'],
    ]);
    expect(run('AGREE_LIST', column(5, 6), column(5, 6), 1)).toEqual([headings, ['', '', '', '', 'no differences']]);
  });
  test('every kind of finding, rows blank on both sides apart', () => {
    const designer = column('pass', null, 3, new CellError('#N/A'), '2+9i', null, true);
    const checker = column('FAIL', '', null, 7, '2+8.5i', 4, 'x');
    expect(run('AGREE_LIST', designer, checker, 2, 0, false)).toEqual([
      [1, 'pass', 'FAIL', '', 'DIFFERS in words'],
      [3, 3, '', '', 'one is missing'],
      [4, '#N/A', 7, '', 'error in a cell'],
      [5, '2+9i', '2+8.5i', expect.closeTo(5.72598, 5), 'DIFFERS by 5.73 %'],
      [6, '', 4, '', 'one is missing'],
      [7, 'TRUE', 'x', '', 'DIFFERS in words'],
    ]);
  });
  test('a tolerance a row', () => {
    expect(run('AGREE_LIST', column(101, 101), column(100, 100), column(2, '0.5 %'), 0, false)).toEqual([[2, 101, 100, expect.closeTo(1, 9), 'DIFFERS +1.00 %']]);
    expect(run('AGREE_LIST', column(101, null, 101), column(100, null, 100), column(2, null, null))).toEqual(refusal('#N/A', 'missing: tolerance_pct row 3'));
    expect(run('AGREE_LIST', column(101, 5), column(100, 5), column(2, -2))).toEqual(refusal('#VALUE!', 'tolerance_pct row 2: got -2, takes 0 to 100 %'));
  });
  test('columns of the same height', () => {
    expect(run('AGREE_LIST', column(1, 2, 3), column(1, 2), 1)).toEqual(refusal('#VALUE!', 'checker: got 2 rows, takes 3 as the designer has'));
    expect(run('AGREE_LIST', column(1, 2, 3), column(1, 2, 3), column(1, 1))).toEqual(refusal('#VALUE!', 'tolerance_pct: got 2 rows, takes 1 or 3'));
    expect(run('AGREE_LIST', [[1, 2], [3, 4]], column(1, 2), 1)).toEqual(refusal('#VALUE!', 'designer: got 2 columns, takes one'));
  });
});

describe('AGREE_HINT', () => {
  test.each<[Cell, Cell, string]>([
    [44.55, 31.5, 'ratio 1.414: r.m.s. against peak?'],
    [31.5, 54.6, 'ratio 1.733: line against phase?'],
    [31.5, 37, ''],
    [31.5, 31.5, ''],
    [31.5, -31.5, 'sign changed'],
    [0, 5, ''],
    [0, 0, ''],
    ['pass', 'FAIL', ''],
    [8265625, 8.265625, 'ratio 1E+06: a million: A²s against kA²s?'],
    ['1+2i', '1.2+2.4i', 'ratio 1.2: conductor at 70 °C against 20 °C?'],
    [30, 25.98, 'ratio 1.155: three-phase against two-phase fault?'],
    [20, 19, 'ratio 1.053: voltage factor c 0.95 against 1?'],
    [21, 19, 'ratio 1.105: voltage factor of the greatest against the least fault?'],
    [44, 40, 'ratio 1.1: voltage factor c 1.1 against 1?'],
    [143, 115, 'ratio 1.243: k 143 against 115?'],
    // (143·25)² and (115·25)², (176·25)² and (143·25)²
    [12780625, 8265625, 'ratio 1.546: k² of 143 against 115?'],
    [176, 143, 'ratio 1.231: k 176 against 143?'],
    [19360000, 12780625, 'ratio 1.515: k² of 176 against 143?'],
    [30.2, 12.64, ''],
    [12.5, 2.98757, 'ratio 4.184: joules against calories?'],
    [1e308, 1e-308, ''],
  ])('%p against %p', (designer, checker, words) => {
    expect(run('AGREE_HINT', designer, checker)).toBe(words);
    expect(run('AGREE_HINT', checker, designer)).toBe(words);
  });
  test('figures that agree within a wide tolerance are not explained', () => {
    expect(run('AGREE_HINT', 100, 102, 5)).toBe('');
    expect(run('AGREE_HINT', 100, 105, 5)).toBe('ratio 1.05: voltage factor c 1.05 against 1?');
    expect(run('AGREE_HINT', 100, 105, 6)).toEqual(refusal('#NUM!', 'within_pct: 6 is outside above 0, up to 5 %'));
    expect(run('AGREE_HINT', '', 105)).toEqual(refusal('#N/A', 'missing: designer'));
  });
});

describe('VALID_RANGE', () => {
  test('inside, or every argument that is not', () => {
    expect(run('VALID_RANGE', 'CABLE_WITHSTAND', 115, 25)).toBe('inside');
    expect(run('VALID_RANGE', 'jw.cable_withstand', 5, 4000, 25)).toBe('k: 5 is outside 15 to 300 A√s/mm²; csa_mm2: 4000 is outside above 0, up to 3000 mm²; runs: 25 is outside 1 to 24');
    expect(run('VALID_RANGE', 'CABLE_WITHSTAND', -1, '', '63 kg')).toBe('k: got -1, takes 15 to 300 A√s/mm²; missing: csa_mm2; runs: got "63 kg", takes a number without a unit');
  });
  test('errors, too many arguments and rules of the function itself count too', () => {
    expect(run('VALID_RANGE', 'CABLE_WITHSTAND', new CellError('#REF!'), 25, 1, 7)).toBe('k: #REF!; CABLE_WITHSTAND takes 3 arguments, got 4');
    expect(run('VALID_RANGE', 'UNIT_CONVERT', 63, 'kA', 'mm²')).toBe('to: mm² is area, kA is current');
    expect(run('VALID_RANGE', 'LIMIT_TEST', 3, '')).toBe('inside');
    expect(run('VALID_RANGE', 'LIMIT_MARGIN', 3, '')).toBe('missing: limit');
  });
  test('an unknown function', () => {
    expect(run('VALID_RANGE', 'CABLE_STRENGTH', 1)).toEqual(refusal('#VALUE!', 'function_name: no function named CABLE_STRENGTH'));
  });
});

describe('VERDICT_COUNT', () => {
  test('counts every cell and hides none', () => {
    const verdicts = [...Array<Cell>(9).fill('pass'), 'FAIL', 'not shown', 'FAIL', new CellError('#N/A')];
    expect(run('VERDICT_COUNT', column(...verdicts))).toBe('2 FAIL, 1 not shown, 9 pass, 1 error');
    expect(run('VERDICT_COUNT', [['pass', 'fail'], [' Not  shown ', 'agrees'], [null, 3]])).toBe('1 FAIL, 1 not shown, 1 pass, 2 other, 1 blank');
    expect(run('VERDICT_COUNT', 'pass')).toBe('1 pass');
    expect(run('VERDICT_COUNT', column('constructor', '__proto__'))).toBe('2 other');
    expect(outcomeOf('VERDICT_COUNT', [column('pass', 0)], excel).value).toBe('1 pass, 1 blank');
    expect(run('VERDICT_COUNT', column(null, ''))).toEqual(refusal('#N/A', 'missing: verdicts'));
  });
});

describe('UNIT_CONVERT', () => {
  test('check figures', () => {
    expect(run('UNIT_CONVERT', 12.5, 'J/cm²', 'cal/cm²')).toBeCloseTo(2.98757, 5);
    expect(run('UNIT_CONVERT', 350, 'ft', 'm')).toBeCloseTo(106.68, 10);
    expect(run('UNIT_CONVERT', 63, 'kA', 'mm²')).toEqual(refusal('#VALUE!', 'to: mm² is area, kA is current'));
  });
  test('spellings, signs, units inside the value', () => {
    expect(run('UNIT_CONVERT', -5, 'ohm', 'mΩ')).toBe(-5000);
    expect(run('UNIT_CONVERT', '63 A', 'kA', 'A')).toBeCloseTo(63, 12);
    expect(run('UNIT_CONVERT', 0, 'm', 'mm')).toBe(0);
    expect(run('UNIT_CONVERT', 1, 'h', 's')).toBe(3600);
    expect(run('UNIT_CONVERT', 6, '%', '1')).toBe(0.06);
  });
  test('what it does not take', () => {
    expect(run('UNIT_CONVERT', 5, 'stone', 'kg')).toEqual(refusal('#VALUE!', 'from: "stone" is not a unit known here'));
    expect(run('UNIT_CONVERT', 5, 'm', 'ell')).toEqual(refusal('#VALUE!', 'to: "ell" is not a unit known here'));
    expect(run('UNIT_CONVERT', 5, '°C', 'K')).toEqual(refusal('#VALUE!', 'to: K is temperature difference, °C is temperature'));
    expect(run('UNIT_CONVERT', true, 'm', 'mm')).toEqual(refusal('#VALUE!', 'value: got TRUE, takes a number in m'));
    expect(run('UNIT_CONVERT', '5 s', 'm', 'mm')).toEqual(refusal('#VALUE!', 'value: got "5 s": s is time, takes m'));
    expect(run('UNIT_CONVERT', 1e308, 'km', 'mm')).toEqual(refusal('#NUM!', 'the result is not a finite number'));
    expect(run('UNIT_CONVERT', '', 'm', 'mm')).toEqual(refusal('#N/A', 'missing: value'));
  });
  test('working and cautions', () => {
    expect(run('SHOW_WORKING', 'UNIT_CONVERT', 2, 'm', 'cm')).toBe('value·from/to; value 2, from m, to cm; 200 cm');
    expect(cautionOf('UNIT_CONVERT', 1, 'kA²s', 'A²s')).toBe('kA²s read as 10⁶ A²s; some sheets mean 10³ A²s by it');
  });
});

describe('CHECK_DIGEST', () => {
  test('check figures', () => {
    expect(run('CHECK_DIGEST', [[1, 2], ['a', true]])).toBe('2B52F745');
    expect(run('CHECK_DIGEST', [[1, 2], ['a', false]])).toBe('B892D196');
    expect(run('CHECK_DIGEST', 63)).toBe('D54ADA7F');
  });
  test('a single cell and a range of it are the same; minus zero is zero; a blank is an empty text', () => {
    expect(run('CHECK_DIGEST', [[63]])).toBe('D54ADA7F');
    expect(run('CHECK_DIGEST', -0)).toBe(run('CHECK_DIGEST', 0));
    expect(run('CHECK_DIGEST', null)).toBe(run('CHECK_DIGEST', ''));
  });
  test('every input tells apart from its neighbours', () => {
    const inputs: Parameters<typeof run>[1][][] = [
      [0], [null], [' '], ['0'], [false], [true], ['TRUE'], [new CellError('#N/A')], [new CellError('#REF!')], ['#N/A'], ['a'], ['A'], ['é'],
      [1, 2], [[[1, 2]]], [[[1], [2]]], [[[1]], 2, null], [1], [1.0000000000000002], ['1'],
    ];
    const digests = inputs.map((argv) => run('CHECK_DIGEST', ...argv));
    expect(new Set(digests).size).toBe(inputs.length);
    for (const text of digests) expect(text).toMatch(/^[0-9A-F]{8}$/);
  });
  test('nothing to watch; a blank that arrives as zero', () => {
    expect(run('CHECK_DIGEST')).toEqual(refusal('#N/A', 'missing: inputs'));
    expect(outcomeOf('CHECK_DIGEST', [[[1, 0]]], excel).value).toEqual(refusal('#VALUE!', 'inputs: a cell is blank or zero: write 0 as text'));
  });
});

describe('CORE_VERSION', () => {
  test('version, date, every standard once; two calls agree', () => {
    const print = run('CORE_VERSION') as string;
    expect(print).toMatch(/^Joulewright core \d+\.\d+\.\d+, \d{4}-\d\d-\d\d; /);
    const standards = print.split('; ').slice(1);
    expect(new Set(standards).size).toBe(standards.length);
    for (const { declaration } of catalogue.entries) for (const { source } of declaration.basis) if (/^(IEC|IEEE) .*:\d{4}/.test(source)) expect(standards).toContain(source);
    expect(run('CORE_VERSION')).toBe(print);
    expect(run('CORE_VERSION', 1)).toEqual(refusal('#VALUE!', 'CORE_VERSION takes 0 arguments, got 1'));
  });
});
