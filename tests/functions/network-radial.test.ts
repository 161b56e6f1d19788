import { complexText, parseComplex } from '../../src/core/complex';
import type { Recorder } from '../../src/core/working';
import { type Cell, CellError, type Matrix } from '../../src/functions/kernel/cell';
import { expectPrinted, expectRefused } from '../support/expect';
import { outcomeOf, run } from '../support/run';

const headed: Matrix = [
  ['board', 'fed_from', 'z_mohm', 'z_return_mohm'],
  ['MSB', 'source', '0.2+0.4i', '0.3+0.5i'],
  ['DB1', 'MSB', '6.2+2.4i', '9.1+2.6i'],
  ['DB2', 'MSB', '12+3i', ''],
  ['P1', 'DB1', '25+4i', '25+4i'],
];
const faulty: Matrix = [
  ['MSB', 'source', '0.2+0.4i'], ['DB1', 'MSB', '6.2+2.4i'], ['DB2', 'DB9', '12+3i'], ['P1', 'DB2', '25+4i'], ['L1', 'L2', '5+1i'], ['L2', 'L1', '5+1i'],
];
const SOURCE = '1.9+9.4i';
const AT = (boards: Matrix, board: string, quantity: string, ...rest: (Cell | undefined)[]) => [boards, SOURCE, board, quantity, 415, ...rest];

/** Six digits of each figure, so that a table compares with its print. */
const digits = (cell: Cell): Cell => {
  if (typeof cell === 'number') return Number(cell.toPrecision(6));
  const z = typeof cell === 'string' && /\di$/.test(cell) ? parseComplex(cell) : undefined;
  return z ? complexText(z.round(6)) : cell;
};
const table = (...argv: unknown[]): Matrix => (run('NET_RADIAL', ...(argv as Matrix[])) as Matrix).map((row) => row.map(digits));
const HEADINGS = ['board', 'Z mΩ', 'Ik3 kA', 'Ik2 kA', 'kappa', 'ip kA', 'Ik1 kA', 'note'];

/** Figures of the reference calculation, printed to six digits. */
describe('a tree of boards', () => {
  test('every board in one pass', () => {
    expect(table(headed, SOURCE, 415)).toEqual([
      HEADINGS,
      ['MSB', '2.1+9.8i', 25.1016, 21.7386, 1.53527, 54.5007, 23.788, ''],
      ['DB1', '8.3+12.2i', 17.0497, 14.7655, 1.1473, 27.6637, 10.7531, ''],
      ['DB2', '14.1+12.8i', 13.2109, 11.441, 1.05598, 19.7289, 'not shown', ''],
      ['P1', '33.3+16.2i', 6.79369, 5.88351, 1.02206, 9.81964, 3.51382, ''],
    ]);
  });
  test('faulty rows say why, the others stand', () => {
    expect(table(faulty, SOURCE, 415)).toEqual([
      HEADINGS,
      ['MSB', '2.1+9.8i', 25.1016, 21.7386, 1.53527, 54.5007, 'not shown', ''],
      ['DB1', '8.3+12.2i', 17.0497, 14.7655, 1.1473, 27.6637, 'not shown', ''],
      ['DB2', '', '', '', '', '', '', 'fed from unknown board DB9'],
      ['P1', '', '', '', '', '', '', 'fed through a faulty row: DB2'],
      ['L1', '', '', '', '', '', '', 'loop: L1 > L2 > L1'],
      ['L2', '', '', '', '', '', '', 'loop: L1 > L2 > L1'],
    ]);
  });
  test('one figure at one board', () => {
    expectPrinted('NET_RADIAL_AT', AT(headed, 'P1', 'Ik1', 0.95), 3.17917);
    expectPrinted('NET_RADIAL_AT', AT(headed, 'db1', 'ip'), 27.6637);
    expectPrinted('NET_RADIAL_AT', AT(headed, ' DB1 ', 'κ'), 1.1473);
    expectPrinted('NET_RADIAL_AT', AT(headed, 'DB2', '2ph'), 11.441);
    expectPrinted('NET_RADIAL_AT', AT(headed, 'DB2', 'Z'), '14.1+12.8i');
    expectRefused('NET_RADIAL_AT', AT(headed, 'DB2', 'Ik1'), '#N/A', 'missing: z_return_mohm on the path');
    expectRefused('NET_RADIAL_AT', AT(faulty, 'P1', 'Ik3'), '#N/A', 'boards row 4: fed through a faulty row: DB2');
    expectRefused('NET_RADIAL_AT', AT(faulty, 'L1', 'Ik3'), '#NUM!', 'boards row 5: loop: L1 > L2 > L1');
    expectRefused('NET_RADIAL_AT', AT(faulty, 'DB7', 'Ik3'), '#N/A', 'board: no board named DB7');
  });
  test('the way from the source to a board', () => {
    expect((run('NET_PROFILE', headed, SOURCE, 'P1', 415) as Matrix).map((row) => row.map(digits))).toEqual([
      ['board', 'Z mΩ', 'Ik3 kA', 'Ik1 kA'],
      // 1.05·415/(√3·|1.9 + j9.4|), by hand.
      ['source', '1.9+9.4i', 26.2333, 26.2333],
      ['MSB', '2.1+9.8i', 25.1016, 23.788],
      ['DB1', '8.3+12.2i', 17.0497, 10.7531],
      ['P1', '33.3+16.2i', 6.79369, 3.51382],
    ]);
    expect(run('NET_PROFILE', faulty, SOURCE, 'DB1', 415, undefined, undefined, false)).toHaveLength(3);
    expectRefused('NET_PROFILE', [faulty, SOURCE, 'P1', 415], '#N/A', 'boards row 4: fed through a faulty row: DB2');
  });
});

describe('reading a boards table', () => {
  const levels = (boards: Matrix) => table(boards, SOURCE, 415).slice(1).map(([board, , ik3, , , , ik1, note]) => [board, ik3, ik1, note]);
  test('columns are found by heading, in any order, others ignored', () => {
    const shuffled: Matrix = [
      ['remark', 'Z return mΩ', 'Fed from', 'Z mΩ', 'Board'],
      ['x', '', 'MSB', '12+3i', 'DB2'],
      [null, '0.3+0.5i', 'Source', '0.2+0.4i', 'msb'],
    ];
    expect(levels(shuffled)).toEqual([['DB2', 13.2109, 'not shown', ''], ['msb', 25.1016, 23.788, '']]);
  });
  test('numbers as names, units, blank rows at the end', () => {
    expect(levels([[1, 'source', '0.0002 Ω', null], [1.5, 1, '0.3', null], [null, '', null, null]])).toEqual([['1', 26.12, 'not shown', ''], ['1.5', 25.932, 'not shown', '']]);
  });
  test.each<[string, Matrix, string[]]>([
    ['blanks', [['A', null, '1+1i'], ['', 'A', '1+1i'], ['B', 'source', ' ']], ['missing: fed_from', 'missing: board', 'missing: z_mohm']],
    ['bad cells', [['A', 'source', 'thick'], [true, 'source', '1'], ['B', 'source', '-1+2i'], ['C', 'source', '1+2x']], [
      'z_mohm: got "thick", takes a number in mΩ', 'board: got TRUE, takes a name', 'z_mohm: got "-1+2i", takes R and X of 0 or more', 'z_mohm: got "1+2x": +2x is not a unit known here, takes mΩ',
    ]],
    ['names used twice', [['A', 'source', '1+1i'], ['a ', 'source', '2+1i'], ['B', 'A', '1+1i'], ['A', 'B', '1+1i']], [
      'named twice: rows 1, 2 and 4', 'named twice: rows 1, 2 and 4', 'fed through a faulty row: A', 'named twice: rows 1, 2 and 4',
    ]],
    ['fed from itself', [['A', 'A', '1+1i'], ['B', 'A', '1+1i']], ['loop: A > A', 'fed through a faulty row: A']],
    ['a ring with a tail', [['T', 'C', '1+1i'], ['A', 'B', '1+1i'], ['B', 'C', '1+1i'], ['C', 'A', '1+1i']], [
      'fed through a faulty row: C', 'loop: A > B > C > A', 'loop: A > B > C > A', 'loop: A > B > C > A',
    ]],
    ['the supply as a board', [['Source', 'source', '1+1i']], ['board: Source is the supply, takes another name']],
    ['error cells', [['A', 'source', new CellError('#REF!')], ['B', 'A', '1']], ['z_mohm: #REF!', 'fed through a faulty row: A']],
    ['dependants name the row at fault', [['A', 'X', '1'], ['B', 'A', '1'], ['C', 'B', '1']], ['fed from unknown board X', 'fed through a faulty row: A', 'fed through a faulty row: A']],
  ])('%s', (_what, boards, notes) => {
    expect(levels(boards).map(([, ik3, , note]) => [ik3, note])).toEqual(notes.map((note) => ['', note]));
  });
  test('a bad return spoils its row too', () => {
    expect(levels([['A', 'source', '1+1i', 'x']])).toEqual([['A', '', '', 'z_return_mohm: got "x", takes a number in mΩ']]);
  });
  test('an error cell passes through a question about its row', () => {
    const error = new CellError('#REF!');
    expect(run('NET_RADIAL_AT', [['A', 'source', error]], SOURCE, 'A', 'Ik3', 415)).toEqual(error);
    expect(run('NET_RADIAL_AT', [['A', 'source', new CellError('#NUM!', 'too long')]], SOURCE, 'A', 'Ik3', 415)).toEqual(new CellError('#NUM!', 'too long'));
  });
  test('shapes that cannot be read', () => {
    expectRefused('NET_RADIAL', [[['A', 'source']], SOURCE, 415], '#VALUE!', 'boards: got 2 columns, takes board | fed_from | z_mohm | [z_return_mohm]');
    expectRefused('NET_RADIAL', ['A', SOURCE, 415], '#VALUE!', 'boards: got one column, takes board | fed_from | z_mohm | [z_return_mohm]');
    expectRefused('NET_RADIAL', [[['board', 'fed from'], ['A', 'source']], SOURCE, 415], '#VALUE!', 'boards: no column z_mohm');
    expectRefused('NET_RADIAL', [[['board', 'fed_from', 'z_mohm', 'Z mΩ'], ['A', 'source', '1', '2']], SOURCE, 415], '#VALUE!', 'boards: column z_mohm stands twice');
    expectRefused('NET_RADIAL', [[['board', 'fed_from', 'z_mohm']], SOURCE, 415], '#N/A', 'missing: boards');
    expectRefused('NET_RADIAL', [[[null, '']], SOURCE, 415], '#N/A', 'missing: boards');
    expectRefused('NET_RADIAL', [headed, '', 415], '#N/A', 'missing: source_mohm');
  });
  test('no fault level behind next to no impedance', () => {
    expect(table([['A', 'source', 0], ['B', 'A', '1+1i']], '0.01+0.02i', 415).slice(1)).toEqual([
      ['A', '', '', '', '', '', '', 'size of Z is below 0.1 mΩ: no fault level'],
      ['B', '1.01+1.02i', 175.263, 151.782, 1.07025, 265.271, 'not shown', ''],
    ]);
    expectRefused('NET_RADIAL_AT', [[['A', 'source', 0]], 0, 'A', 'Ik3', 415], '#NUM!', 'boards row 1: size of Z is below 0.1 mΩ: no fault level');
    expect(table([['A', 'source', '1e308'], ['B', 'A', '1e308'], ['C', 'source', '1']], 1, 415).slice(1).map((row) => row[7])).toEqual(['', 'Z is not a finite number', '']);
  });
  test('where a blank arrives as zero, it never becomes an impedance nor a path', () => {
    const argv = [[['A', 'source', '1+1i', 0], ['B', 'A', 0, '1'], ['C', 0, '1', '1'], [0, 0, 0, 0]], SOURCE, 415];
    const rows = outcomeOf('NET_RADIAL', argv as never, { blankArrivesAsZero: true }).value as Matrix;
    expect(rows.slice(1).map((row) => [row[0], row[6], row[7]])).toEqual([
      ['A', 'not shown', ''], ['B', '', 'z_mohm is blank or zero: write 0 as text'], ['C', '', 'missing: fed_from'],
    ]);
  });
  test('loop of the supply on its own', () => {
    // 1.05·415/√3/|4.2 + j11.4|, by hand.
    expectPrinted('NET_RADIAL_AT', AT([['A', 'source', '0.2+0.4i', '1+1i']], 'A', 'Ik1', undefined, '3+10i'), 20.7078);
  });
});

describe('what is remembered of a table never shows', () => {
  test('a table changed in place is read anew', () => {
    const boards: Matrix = [['A', 'source', '1+1i'], ['B', 'A', '1+1i']];
    expectPrinted('NET_RADIAL_AT', AT(boards, 'B', 'Z'), '3.9+11.4i');
    boards[0]![2] = '5+1i';
    expectPrinted('NET_RADIAL_AT', AT(boards, 'B', 'Z'), '7.9+11.4i');
    boards.push(['C', 'B', '1']);
    expectPrinted('NET_RADIAL_AT', AT(boards, 'C', 'Z'), '8.9+11.4i');
  });
  test('the same table with another source, return or host', () => {
    const boards: Matrix = [['A', 'source', '1+1i', '0'], ['B', 'A', '1+1i', 0]];
    expectPrinted('NET_RADIAL_AT', [boards, '1+1i', 'B', 'Z', 415], '3+3i');
    expectPrinted('NET_RADIAL_AT', [boards, '2+1i', 'B', 'Z', 415], '4+3i');
    expectPrinted('NET_RADIAL_AT', [boards, '1+1i', 'B', 'Z', 415], '3+3i');
    expect(run('NET_RADIAL_AT', boards, '1+1i', 'B', 'Ik1', 415)).not.toEqual(run('NET_RADIAL_AT', boards, '1+1i', 'B', 'Ik1', 415, undefined, '9+9i'));
    expect(typeof run('NET_RADIAL_AT', boards, '1+1i', 'B', 'Ik1', 415)).toBe('number');
    expect(outcomeOf('NET_RADIAL_AT', [boards, '1+1i', 'B', 'Ik1', 415], { blankArrivesAsZero: true }).value).toEqual(new CellError('#N/A', 'missing: z_return_mohm on the path'));
  });
  test('more tables than are kept', () => {
    const boards = (r: number): Matrix => [['A', 'source', r]];
    for (let round = 0; round < 2; round += 1) for (let r = 1; r <= 20; r += 1) expectPrinted('NET_RADIAL_AT', [boards(r), 1, 'A', 'Z', 415], String(r + 1));
  });
});

test('a call says what it used', () => {
  expect(run('SHOW_WORKING', 'NET_RADIAL_AT', headed, SOURCE, 'P1', 'Ik1', 415, 0.95)).toBe(
    'Z = Z(fed from)+z; Ik3 = c·Un/(√3·|Z|); Ik1 = c·Un/(√3·|Z_loop|); boards 4 rows, source_mohm 1.9+9.4i mΩ, board P1, quantity Ik1, volts_V 415 V, c 0.95, source_loop_mohm source_mohm; 3.179 kA');
  expect(run('SHOW_STEPS', 'NET_RADIAL_AT', headed, SOURCE, 'P1', 'Ik3', 415)).toContainEqual(['Z = Z_source+Σ z', '33.3+16.2i mΩ']);
  // 1.9+9.4i, then runs and returns 0.5+0.9i, 15.3+5i and 50+8i.
  expect(run('SHOW_STEPS', 'NET_RADIAL_AT', headed, SOURCE, 'P1', 'Ik1', 415)).toContainEqual(['Z_loop = Z_loop,source+Σ(z+z_return)', '67.7+23.3i mΩ']);
  expect((outcomeOf('NET_RADIAL_AT', AT(headed, 'P1', 'Ik3')).work as Recorder).steps[0]!.inputs).toEqual({ path: 'source > MSB > DB1 > P1' });
  expect(run('ASSUMED', 'NET_RADIAL_AT', headed, SOURCE, 'P1', 'Ik3', 415)).toBe('c=1.05; source_loop_mohm=source_mohm');
});
