import { type Cell, CellError, type Matrix } from '../../src/functions/kernel/cell';
import { refusal } from '../support/expect';
import { run } from '../support/run';

const column = (...cells: Cell[]): Matrix => cells.map((cell) => [cell]);

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
    ['a number for a word', 31.5, 'pass', 100, undefined, 'DIFFERS in kind'],
    ['a sheet’s own space behind an impedance', '2+9i ', '2+9i', 0, undefined, 'agrees'],
    ['a sign lost in an impedance leaves words, not 29i', '2 9i', '29i', 0, undefined, 'DIFFERS in kind'],
    // |3+4i − 3|/3 = 4/3, whatever its real part does
    ['a reactance that the checker left out', '3+4i', 3, 2, undefined, 'DIFFERS by 133.33 %'],
    ['a number typed as text', '31.5', 31.5, 0, undefined, 'agrees'],
    ['its sign is kept, unlike that of an impedance', '44.5', ' 31.5', 2, undefined, 'DIFFERS +41.27 %'],
    ['an impedance against a resistance', '2+0i', 2, 0, undefined, 'agrees'],
    ['j for i', '2+9j', '2 + 9i', 0, undefined, 'agrees'],
    ['truth values', true, 'TRUE', 0, undefined, 'agrees'],
    ['figures beyond a per cent', 1e308, 1e-308, 0, undefined, 'DIFFERS beyond any per cent'],
    ['very large per cents keep few digits', 1e30, 1, 0, undefined, 'DIFFERS +1E+32 %'],
    ['the least of them: 100·10¹³', 1e13 + 1, 1, 0, undefined, 'DIFFERS +1E+15 %'],
    ['the greatest with all digits', 1e13, 1, 0, undefined, 'DIFFERS +999999999999900.00 %'],
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
  test.each([
    [44.5, 31.5, 'difference = 100·(designer/checker − 1)', '41.2698 %'],
    // |0.5i|/|2+8.5i|; of impedances the quotient less one would be a complex number
    ['2+9i', '2+8.5i', 'difference = 100·|designer − checker|/|checker|', '5.72598 %'],
    ['3+4i', 3, 'difference = 100·|designer − checker|/|checker|', '133.333 %'],
  ])('the working of %p against %p is that of its kind', (designer, checker, step, value) => {
    for (const steps of [run('SHOW_STEPS', 'AGREE', designer, checker, 2), run('SHOW_STEPS', 'AGREE_DIFFERENCE', designer, checker)]) expect(steps).toContainEqual([step, value]);
  });
  test.each<[Cell, Cell]>([['pass', 'FAIL'], [5, 0], [5, ''], ['pass', 5]])('no step is shown where %p against %p gives no per cent', (designer, checker) => {
    expect((run('SHOW_STEPS', 'AGREE', designer, checker, 2) as Matrix).filter(([step]) => String(step).startsWith('difference'))).toEqual([]);
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
    ['-31.5', 31.5, 'sign changed'],
    [0, 5, ''],
    [-5, 0, ''],
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
    // Resistance of one run at 20 °C, 18.4 mΩ: two runs, three poles, 90 °C and 160 °C.
    [18.4, 9.2, 'ratio 2: one against two runs or poles, or one way against both ways?'],
    [55.2, 18.4, 'ratio 3: one against three phases or poles?'],
    [23.552, 18.4, 'ratio 1.28: conductor at 90 °C against 20 °C?'],
    [28.704, 18.4, 'ratio 1.56: conductor at 160 °C against 20 °C?'],
    [4.5, 0.045, 'ratio 100: per cent against a ratio?'],
    [31500, 31.5, 'ratio 1000: a thousand: prefix of the unit?'],
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
