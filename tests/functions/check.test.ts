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
  // A per cent of a limit says nothing unless both are above 0: none is worked, on the way to a verdict either.
  test.each([[-5, -4, 'pass'], [-5, 4, 'pass'], [5, -4, 'FAIL'], [0, 4, 'pass'], [5, 0, 'FAIL']])('%p against %p is judged without a margin', (value, limit, verdict) => {
    expect(run('SHOW_STEPS', 'LIMIT_TEST', value, limit)).toEqual([['step', 'value'], ['value', String(value)], ['limit', String(limit)], ['sense', 'at most'], ['LIMIT_TEST', verdict]]);
  });
  test('with its margin where both are above 0', () => {
    expect(run('SHOW_STEPS', 'LIMIT_TEST', 5, 4)).toContainEqual(['margin = 100·(limit/value − 1)', '-20 %']);
    expect(run('SHOW_STEPS', 'LIMIT_TEST', 5, 4, 'at least')).toContainEqual(['margin = 100·(value/limit − 1)', '25 %']);
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
    expect(standards).toEqual([...standards].sort());
    // Standards only, no "own rule" or "practice"; the gate table's edition stands for the joule limits that name none.
    for (const standard of standards) expect(standard).toMatch(/^(IEC|IEEE) \d/);
    expect(standards).toContain('IEC 60269-1:2006+A2');
    expect(standards).not.toContain('IEC 60269-1');
    for (const { declaration } of catalogue.entries) for (const { source } of declaration.basis) if (/^(IEC|IEEE) .*:\d{4}/.test(source)) expect(standards).toContain(source);
    expect(run('CORE_VERSION')).toBe(print);
    expect(run('CORE_VERSION', 1)).toEqual(refusal('#VALUE!', 'CORE_VERSION takes 0 arguments, got 1'));
  });
});
