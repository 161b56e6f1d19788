import { complex } from '../../src/core/complex';
import { CellError, type Matrix } from '../../src/functions/kernel/cell';
import { Kept, Remembered } from '../../src/functions/network-tables/kept';
import { Boards, Branches } from '../../src/functions/network-tables/tables';
import { expectPrinted } from '../support/expect';

/** Asks about tables and tells how often one had to be made. */
function asker(kept = new Kept<number>()) {
  let made = 0;
  return {
    ask: (rows: Matrix, name = 'boards', blankArrivesAsZero = false): number => kept.of({ name, rows, reading: { blankArrivesAsZero, remark: () => undefined } }, () => (made += 1)),
    made: (): number => made,
  };
}
const sample = (): Matrix => [['A', 'source', 1], ['B', 'A', new CellError('#NUM!', 'too long')], ['C', null, true]];

describe('a table is made once and kept', () => {
  test('asked again with the same cells, error cells among them, which hosts make anew', () => {
    const { ask, made } = asker();
    expect([ask(sample()), ask(sample()), ask(sample())]).toEqual([1, 1, 1]);
    expect(made()).toBe(1);
  });
  test.each<[string, Matrix]>([
    ['a figure', [['A', 'source', 2], ...sample().slice(1)]],
    ['a blank that was none', [...sample().slice(0, 2), [null, null, true]]],
    ['code of an error', [sample()[0]!, ['B', 'A', new CellError('#N/A', 'too long')], sample()[2]!]],
    ['reason of an error', [sample()[0]!, ['B', 'A', new CellError('#NUM!', 'too short')], sample()[2]!]],
    ['an error where a figure was', [['A', 'source', new CellError('#N/A')], ...sample().slice(1)]],
    ['a figure where an error was', [sample()[0]!, ['B', 'A', 1], sample()[2]!]],
    ['a blank where an error was', [sample()[0]!, ['B', 'A', null], sample()[2]!]],
    ['an error where a blank was', [...sample().slice(0, 2), ['C', new CellError('#N/A'), true]]],
    ['the last cell', [...sample().slice(0, 2), ['C', null, false]]],
    ['a row less', sample().slice(0, 2)],
    ['a row more', [...sample(), ['D', 'A', 1]]],
    ['the same cells in other rows', [['A', 'source'], [1, 'B', 'A', new CellError('#NUM!', 'too long')], ['C', null, true]]],
  ])('made anew: %s', (_what, changed) => {
    const { ask } = asker();
    expect([ask(sample()), ask(changed), ask(sample()), ask(changed)]).toEqual([1, 2, 1, 2]);
  });
  test('made anew under another name, and where a 0 may be a blank', () => {
    const { ask } = asker();
    expect([ask(sample()), ask(sample(), 'table'), ask(sample(), 'boards', true)]).toEqual([1, 2, 3]);
    expect([ask(sample()), ask(sample(), 'table'), ask(sample(), 'boards', true)]).toEqual([1, 2, 3]);
  });
  test('a refusal is kept too', () => {
    const kept = new Kept<number>();
    let tried = 0;
    const ask = () => kept.of({ name: 'boards', rows: sample(), reading: { blankArrivesAsZero: false, remark: () => undefined } }, () => { throw new Error(`refused ${tried += 1}`); });
    expect(ask).toThrow('refused 1');
    expect(ask).toThrow('refused 1');
  });
  test('eight tables: the one not asked about for longest goes first', () => {
    const { ask, made } = asker();
    const table = (r: number): Matrix => [['A', 'source', r]];
    for (let r = 1; r <= 8; r += 1) ask(table(r));
    for (let r = 1; r <= 8; r += 1) expect(ask(table(r))).toBe(r);
    // Asked about again, so the next longest is the second.
    ask(table(1));
    expect(ask(table(9))).toBe(9);
    expect([1, 3, 4, 5, 6, 7, 8, 9].map((r) => ask(table(r)))).toEqual([1, 3, 4, 5, 6, 7, 8, 9]);
    expect(made()).toBe(9);
    expect(ask(table(2))).toBe(10);
  });
  test('so many cells together, and no more', () => {
    const { ask } = asker(new Kept<number>(8, 6));
    const table = (r: number): Matrix => [['A', 'source', r]];
    expect([ask(table(1)), ask(table(2)), ask(table(1)), ask(table(2))]).toEqual([1, 2, 1, 2]);
    // A third one puts the first out; one that is too large by itself is made each time.
    expect([ask(table(3)), ask(table(2)), ask(table(3)), ask(table(1))]).toEqual([3, 2, 3, 4]);
    const large: Matrix = [['A', 'source', 1, 2], ['B', 'A', 1]];
    expect([ask(large), ask(large)]).toEqual([5, 6]);
  });
});

test('the last answers are remembered, the oldest goes first', () => {
  const remembered = new Remembered<number, number>(2);
  let made = 0;
  const ask = (key: number) => remembered.of(key, (other) => other === key, () => (made += 1));
  expect([ask(7), ask(8), ask(7), ask(8)]).toEqual([1, 2, 1, 2]);
  expect([ask(9), ask(9), ask(8), ask(7)]).toEqual([3, 3, 2, 4]);
});

describe('what is worked once for a table', () => {
  const row = { from: 'A', to: 'B', z: complex(4, 0), state: 'closed', row: 1 } as const;
  const at = (node: string, r: number) => ({ node, z: complex(r, 0), state: 'closed', row: 1 }) as const;
  test('a tree, for each supply and its loop', () => {
    const boards = new Boards('boards', []);
    const [plain, turned] = [() => complex(1, 1), () => complex(1, 2)];
    const solved = boards.network(plain(), plain());
    expect(boards.network(plain(), plain())).toBe(solved);
    expect(boards.network(turned(), plain())).not.toBe(solved);
    expect(boards.network(plain(), turned())).not.toBe(solved);
    expect(boards.network(plain(), plain())).toBe(solved);
  });
  test('a mesh, for each table of sources, and the shares at each node', () => {
    const branches = new Branches('branches', [row]);
    const [one, two] = [{ name: 'sources', rows: [at('A', 2)] }, { name: 'sources', rows: [at('B', 3)] }];
    const answers = branches.with(one);
    expect(branches.with(one)).toBe(answers);
    expect(branches.with(two)).not.toBe(answers);
    expect(answers.solved).toBe(answers.solved);
    expect(answers.extremes).toBe(answers.extremes);
    const [first, second] = [answers.contributions(0), answers.contributions(1)];
    expect([first.node, second.node]).toEqual([0, 1]);
    expect([answers.contributions(0), answers.contributions(1)]).toEqual([first, second]);
    expect(answers.contributions(0)).toBe(first);
  });
  test('one table asked about with supplies of the same resistance, and about faults at two nodes', () => {
    const boards: Matrix = [['A', 'source', '1+1i', '1+1i']];
    expectPrinted('NET_RADIAL_AT', [boards, '1+1i', 'A', 'Z', 400], '2+2i');
    expectPrinted('NET_RADIAL_AT', [boards, '1+2i', 'A', 'Z', 400], '2+3i');
    // 1.05·400/√3 V over |4 + j4|, then over |4 + j5|.
    expectPrinted('NET_RADIAL_AT', [boards, '1+1i', 'A', 'Ik1', 400, undefined, '2+2i'], 42.8661);
    expectPrinted('NET_RADIAL_AT', [boards, '1+1i', 'A', 'Ik1', 400, undefined, '2+3i'], 37.8701);
    // Fault at A: its own source over 2 mΩ, the other over 3 + 4; fault at B: over 2 + 4, and over 3.
    const mesh: Matrix[] = [[['A', 'B', 4]], [['A', 2], ['B', 3]]];
    expectPrinted('NET_CONTRIBUTION_AT', [...mesh, 'A', 'source', 'A', 400], 121.244);
    expectPrinted('NET_CONTRIBUTION_AT', [...mesh, 'B', 'source', 'A', 400], 40.4145);
    expectPrinted('NET_CONTRIBUTION_AT', [...mesh, 'B', 'source', 'B', 400], 80.8290);
    expectPrinted('NET_CONTRIBUTION_AT', [...mesh, 'A', 'source', 'B', 400], 34.6410);
  });
});
