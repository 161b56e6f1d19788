import type { Cell } from '../../src/functions/kernel/cell';
import { bookOf, cellOf, changedBook, tableOf } from './support';

const book = bookOf('cable-schedule');
const column = (table: string, name: string): Cell[] => tableOf(book, table).map((row) => row[name]!);
const row = (table: string, key: string): Record<string, Cell> => tableOf(book, table).find((cells) => Object.values(cells)[0] === key)!;

describe('cable schedule', () => {
  test('shows a pass, a FAIL and what cannot be shown, with the reason', () => {
    expect(row('Cables', 'C01')['withstand']).toBe('pass');
    expect(row('Cables', 'C11')).toMatchObject({ withstand: 'FAIL', 'in time?': 'pass' });
    expect(row('Cables', 'C07')).toMatchObject({ withstand: 'not shown', margin: '–', caution: 'levels differ: let-through at 53.7 kA, fault 23.23 kA' });
    expect(column('Cables', 'withstand').filter((verdict) => verdict === 'pass')).toHaveLength(14);
  });
  test('every margin has the sign of its verdict', () => {
    for (const { withstand, margin } of tableOf(book, 'Cables')) if (withstand !== 'not shown') expect((margin as number) >= 0).toBe(withstand === 'pass');
  });
  test('boards: a tree of two levels, levels falling from board to board', () => {
    const boards = new Map(tableOf(book, 'Boards').map((cells) => [cells['board'], cells]));
    const depth = (board: Cell): number => (board === 'source' ? 0 : 1 + depth(boards.get(board)!['fed from']!));
    expect(Math.max(...[...boards.keys()].map((board) => depth(board!)))).toBe(3);
    for (const cells of boards.values()) {
      const from = boards.get(cells['fed from']!);
      if (from) for (const level of ['Ik3 max', 'Ik3 min', 'Ik1 min', 'ip']) expect(cells[level]).toBeLessThan(from[level] as number);
    }
    expect(book.value('Boards', 'B7')).toBe('no findings');
  });
  test('boards: no range handed to a function of networks holds the cell that calls it', () => {
    const columns = Object.keys(tableOf(book, 'Boards')[0]!);
    const calls = book.formulaCells.filter(({ formula, sheet }) => sheet.name === 'Boards' && formula.includes('NET_RADIAL_AT(Boards[['));
    expect(calls.length).toBeGreaterThan(50);
    for (const { formula, column: place } of calls) {
      const [, from, to] = /NET_RADIAL_AT\(Boards\[\[([^\]]+)\]:\[([^\]]+)\]\]/.exec(formula)!;
      expect(place >= columns.indexOf(from!) && place <= columns.indexOf(to!)).toBe(false);
    }
  });
  test('the ring has more behind each board than one side alone, and less with the ring open', () => {
    for (const cells of tableOf(book, 'RingBoards')) {
      const [whole, left, right, open] = ['Ik3 max', 'from left', 'from right', 'Ik3 min'].map((name) => cells[name] as number) as [number, number, number, number];
      expect(whole).toBeGreaterThan(Math.max(left, right));
      expect(whole).toBeLessThanOrEqual((left + right) * (1 + 1e-9));
      expect(open).toBeLessThan(Math.max(left, right));
    }
    const opened = changedBook('cable-schedule', [{ ...cellOf(book, 'Ring', 'SHOP 1', 'state'), value: 'open' }]);
    const before = tableOf(book, 'RingBoards').map((cells) => cells['Ik3 max'] as number);
    expect(tableOf(opened, 'RingBoards').every((cells, i) => (cells['Ik3 max'] as number) < before[i]!)).toBe(true);
  });
  test('the two mistakes of the designer are found, and no other', () => {
    const found = tableOf(book, 'Check').filter((cells) => cells['agrees?'] !== 'agrees');
    expect(found.map(({ cable, item, 'why?': why }) => [cable, item, why])).toEqual([
      ['C09', 'Ik1 min', expect.stringContaining('voltage factor of the greatest against the least fault')],
      ['C12', 'k²S²', expect.stringContaining('k² of 143 against 115')],
    ]);
  });
  test('duty: a network worse than the test of the breaker is not passed over', () => {
    expect(row('Duty', 'Q1')).toMatchObject({ breaking: 'not shown', caution: expect.stringContaining('power factor') });
    expect(row('Duty', 'Q3')).toMatchObject({ waits: 'not shown', caution: 'missing: icw_kA' });
  });
  test('arc: both currents, each with its own time; the worse is the greater', () => {
    for (const cells of tableOf(book, 'Arcs')) {
      expect(cells['Iarc reduced']).toBeLessThan(cells['Iarc full'] as number);
      expect(cells['time reduced']).toBeGreaterThanOrEqual(cells['time full'] as number);
      expect(cells['E worse']).toBe(Math.max(cells['E full'] as number, cells['E reduced'] as number));
    }
  });
  test('a longer cable has a lower fault level and a slower trip', () => {
    const longer = changedBook('cable-schedule', [{ ...cellOf(book, 'Cables', 'C09', 'length'), value: 140 }]);
    const now = tableOf(longer, 'Cables').find(({ cable }) => cable === 'C09')!;
    expect(now['Ik1 min']).toBeLessThan(row('Cables', 'C09')['Ik1 min'] as number);
    expect(now['trips in']).toBeGreaterThan(row('Cables', 'C09')['trips in'] as number);
  });
});
