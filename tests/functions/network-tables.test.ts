import { nameKey } from '../../src/core/network/names';
import { RadialNetwork } from '../../src/core/network/radial';
import { rowFault } from '../../src/core/network/row-fault';
import { complex } from '../../src/core/complex';
import { CellError, type Matrix } from '../../src/functions/kernel/cell';
import { settledReading } from '../../src/functions/kernel/kind';
import { tableCells } from '../../src/functions/network-tables/table-cells';
import { expectPrinted, expectRefused } from '../support/expect';
import { outcomeOf, run } from '../support/run';

const rowsOf = (name: string, ...argv: unknown[]): Matrix => (run(name, ...(argv as Matrix[])) as Matrix).slice(1);
const whereBlankIsZero = (name: string, ...argv: unknown[]) => outcomeOf(name, argv as Matrix[], { blankArrivesAsZero: true }).value;

describe('names', () => {
  test('spaces of any kind about and between the words of a name do not matter', () => {
    expect(nameKey(' \tDB\u202f\u00a0  1 ')).toBe('db 1');
    const boards: Matrix = [[' Main  board ', 'source', 1], ['DB\u00a01', 'main board', 2], ['DB 2', 'MAIN\u202fBOARD', 3]];
    expect(rowsOf('NET_RADIAL', boards, 1, 400).map((row) => [row[0], row[1]])).toEqual([['Main  board', '2'], ['DB\u00a01', '4'], ['DB 2', '5']]);
    expectPrinted('NET_RADIAL_AT', [boards, 1, 'db  1', 'Z', 400], '4');
  });
  test('a row whose name cannot be read is found under no name', () => {
    const unread = { row: 1, board: '', fedFrom: 'source', z: complex(1, 0), zReturn: undefined, fault: rowFault('#N/A', 'missing: board') };
    expect(new RadialNetwork([unread], complex(1, 0), complex(1, 0)).place('')).toBeUndefined();
  });
  test('a number that is not finite names nothing', () => {
    expect(rowsOf('NET_RADIAL', [[Infinity, 'source', 1]], 1, 400)[0]![7]).toBe('board: got a number that is not finite, takes a name');
  });
  test.each<[number, string]>([
    [5, 'named twice: rows 8, 9, 10, 11 and 12'],
    [6, 'named twice: rows 8, 9, 10, 11, 12 and 1 more'],
    [8, 'named twice: rows 8, 9, 10, 11, 12 and 3 more'],
  ])('one name on %i rows: five are told', (count, note) => {
    const boards: Matrix = [...Array.from({ length: 7 }, (_, i) => [`B${i}`, 'source', 1]), ...Array.from({ length: count }, () => ['X', 'source', 1])];
    expect(rowsOf('NET_RADIAL', boards, 1, 400)[7]![7]).toBe(note);
  });
  test.each<[number, string]>([
    [11, 'loop: B0 > B1 > B2 > B3 > B4 > B5 > B6 > B7 > B8 > B9 > B10 > B0'],
    [12, 'loop: B0 > B1 > B2 > B3 > B4 > B5 > B6 > B7 > B8 > B9 > … > B0'],
  ])('a ring of %i boards: twelve names are told in full', (count, note) => {
    const ring: Matrix = Array.from({ length: count }, (_, i) => [`B${i}`, `B${(i + 1) % count}`, 1]);
    expect(rowsOf('NET_RADIAL', ring, 1, 400)[count - 1]![7]).toBe(note);
  });
});

describe('headings', () => {
  test('any case, spaces and underscores', () => {
    const table: Matrix = [['Z_return  mΩ', ' BOARD ', 'Fed _ from', 'z\u00a0mohm'], ['3', 'A', 'source', '2']];
    // Loop 1 + 2 + 3 mΩ: 1.05·400/√3 V over 6 mΩ.
    expectPrinted('NET_RADIAL_AT', [table, 1, 'A', 'Ik1', 400], 40.4145);
  });
  test('a first row with only one of the first two headings is a row: nodes may be called so', () => {
    expect(rowsOf('NET_MESHED', [['From', 'Node', 1]], [['Node', 2]], 400).map((row) => [row[0], row[1]])).toEqual([['From', '3'], ['Node', '2']]);
    expect(rowsOf('NET_MESHED', [['To', 'X', 1]], [['To', 2]], 400).map((row) => [row[0], row[1]])).toEqual([['To', '2'], ['X', '3']]);
  });
});

describe('states', () => {
  test('spaces about a state do not matter', () => {
    expect(rowsOf('NET_MESHED', [['N', 'S', 1, ' Open '], ['N', 'T', 1, ' In']], [['N', 1]], 400).map((row) => row[6])).toEqual(['', 'not fed', '']);
  });
  test.each(['constructor', '__proto__'])('%s is no state', (state) => {
    expectRefused('NET_MESHED', [[['N', 'S', 1, state]], [['N', 1]], 400], '#VALUE!', `branches row 1: state: got "${state}", takes closed (in, on), open (out, off)`);
  });
});

describe('where a blank arrives as zero', () => {
  test('a state and a return that are given are read', () => {
    expect((whereBlankIsZero('NET_MESHED', [['N', 'S', 1, 'open'], ['N', 'T', 1, 'closed']], [['N', 1, 'in']], 400) as Matrix).map((row) => row[6])).toEqual(['note', '', 'not fed', '']);
    // 1.05·400/√3 V over 1 + 2 + 3 mΩ.
    expect(whereBlankIsZero('NET_RADIAL_AT', [['A', 'source', 2, 3]], 1, 'A', 'Ik1', 400)).toBeCloseTo(40.4145, 4);
  });
  test('a table of zeros is a blank one', () => {
    expect(whereBlankIsZero('NET_RADIAL', [[0, 0, 0], [0, 0, 0]], 1, 400)).toEqual(new CellError('#N/A', 'missing: boards'));
  });
});

test('200,000 rows are taken, one more is a whole sheet selected by mistake; blank rows at the end do not count', () => {
  const [row, blank] = [['A', 'source', 1], [null, '', ' ']];
  const rows = (count: number, blanks = 0): Matrix => [...Array<Matrix[0]>(count).fill(row), ...Array<Matrix[0]>(blanks).fill(blank)];
  expect(tableCells(rows(200_000, 2), 'boards', settledReading).rows).toHaveLength(200_000);
  expect(() => tableCells(rows(200_001), 'boards', settledReading)).toThrow('boards: 200001 rows, takes up to 200000');
});

describe('limits of impedances', () => {
  test('0.1 mΩ has a fault level, however it is summed; less has none', () => {
    // 1.05·415/√3 V over 0.1 mΩ.
    expectPrinted('NET_RADIAL_AT', [[['A', 'source', 0]], 0.1, 'A', 'Ik3', 415], 2515.80);
    // Ten times 0.01 falls short of 0.1 by a rounding.
    const tenths: Matrix = Array.from({ length: 9 }, (_, i) => [`B${i}`, i === 0 ? 'source' : `B${i - 1}`, 0.01]);
    expectPrinted('NET_RADIAL_AT', [tenths, 0.01, 'B8', 'Ik3', 415], 2515.80);
    expectRefused('NET_RADIAL_AT', [[['A', 'source', 0]], 0.0999, 'A', 'Ik3', 415], '#NUM!', 'boards row 1: size of Z is below 0.1 mΩ: no fault level');
  });
  test('a branch of one nanoohm is taken, less is none', () => {
    expectPrinted('NET_MESHED_AT', [[['A', 'B', '1E-6']], [['A', 1]], 'B', 'Z', 400], '1');
    expectRefused('NET_MESHED_AT', [[['A', 'B', '9.99E-7']], [['A', 1]], 'B', 'Z', 400], '#NUM!', 'branches row 1: zero impedance: give the coupler its length or join the nodes');
  });
});

test('a return that is missing nearer the supply is missing for all boards behind it', () => {
  const boards: Matrix = [['A', 'source', '1+1i', ''], ['B', 'A', '1+1i', '1+1i'], ['C', 'B', '1+1i', '1+1i'], ['D', 'source', '1+1i', '1+1i']];
  // D: 1.05·400/√3 V over |3 + j3| mΩ.
  expect(rowsOf('NET_RADIAL', boards, '1+1i', 400).map((row) => row[6])).toEqual(['not shown', 'not shown', 'not shown', expect.closeTo(57.1548, 4)]);
  expectRefused('NET_RADIAL_AT', [boards, '1+1i', 'C', 'Ik1', 400], '#N/A', 'missing: z_return_mohm on the path');
});
