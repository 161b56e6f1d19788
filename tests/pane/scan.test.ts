import { type Cell, CellError } from '../../src/functions/kernel/cell';
import { KINDS, grouped, scan } from '../../src/pane/cautions/scan';
import { snapshotOf } from '../../src/pane/cautions/snapshot';
import type { FormulaCell, PaneHost } from '../../src/pane/host';
import { parseAddress, boxText } from '../../src/sheet/xlsx/address';
import { idleHost } from '../support/fake-host';
import { fakeSource } from '../support/fake-sheets';

/** Invented: what a scan comes upon, one of each. */
const cells: Record<string, Record<string, Cell>> = {
  Works: {
    A1: 115, A2: 25, A3: null,
    C1: 33062500, C2: 'FAIL', C3: 'not shown', C4: new CellError('#NUM!'), C5: 1, C6: 'pass', C7: ' fail ', C8: 'not shown',
    D1: 33062500,
  },
  Data: { A1: 'not shown' },
};
const formulas: [string, string, string][] = [
  ['Works', 'C1', '=JW.CABLE_WITHSTAND(A1,A2,2)'], ['Works', 'D1', '=JW.CABLE_WITHSTAND(A1,A2,2)'],
  ['Works', 'C2', '=JW.LIMIT_TEST(A1,A2)'], ['Works', 'C3', '=JW.LIMIT_TEST(A1,A3)'],
  ['Works', 'C4', '=JW.CABLE_WITHSTAND(A1,25000)'], ['Works', 'C5', '=JW.CABLE_K("Cu","XLPE")'],
  ['Works', 'C6', '=JW.LIMIT_TEST(A2,A1)'], ['Works', 'C8', '=IF(A1>A2,"not shown","pass")'],
];
const host: PaneHost = {
  ...idleHost,
  source: fakeSource({ cells }),
  sheets: async () => Object.keys(cells),
  formulaCells: async (sheet) => formulas.filter(([name]) => sheet === undefined || name === sheet).map(([name, address, formula]): FormulaCell => ({ sheet: name, address, formula, ...parseAddress(address)!, value: cells[name]![address]! })),
};
const found = async (sheet?: string) => {
  const { notices, formulas: count } = (await scan(host, { sheet }))!;
  return { count, list: KINDS.flatMap((kind) => grouped(notices, kind).map(({ words, notices: all }) => [kind, words, ...all.map((each) => `${each.sheet}!${boxText({ top: each.row, bottom: each.row, left: each.column, right: each.column })}`)])) };
};

test('one of each, the gravest first, like words together and none left out', async () => {
  const { count, list } = await found();
  expect(count).toBe(7);
  expect(list).toEqual([
    ['FAIL', expect.stringMatching(/^JW\.LIMIT_TEST: .*value 115, limit 25, sense at most; FAIL$/), 'Works!C2'],
    ['FAIL', 'FAIL, typed in or out of another formula', 'Works!C7'],
    ['not shown', 'JW.LIMIT_TEST: missing: limit', 'Works!C3'],
    ['not shown', 'not shown, typed in or out of another formula', 'Works!C8', 'Data!A1'],
    ['error', '#NUM!: csa_mm2: 25000 is outside above 0, up to 3000 mm²', 'Works!C4'],
    ['caution', 'even sharing taken: a fault inside one run loads that run alone', 'Works!C1', 'Works!D1'],
    ['not up to date', 'Worked again from the sheet it gives 143; the cell shows 1. Recalculate it.', 'Works!C5'],
  ]);
});

test('calls of one formula that say the same are one caution of its cell', async () => {
  const twice = '=JW.CABLE_WITHSTAND(A1,A2,2)-JW.CABLE_WITHSTAND(A1,A2,2)';
  const one: FormulaCell = { sheet: 'Works', address: 'D2', row: 1, column: 3, formula: twice, value: 0 };
  const { notices } = (await scan({ ...host, formulaCells: async () => [one] }, { sheet: 'Works' }))!;
  expect(notices.filter(({ kind }) => kind === 'caution')).toEqual([{ kind: 'caution', words: 'even sharing taken: a fault inside one run loads that run alone', sheet: 'Works', row: 1, column: 3 }]);
});

test('one sheet alone, and a scan that is stopped', async () => {
  expect((await found('Data')).list).toEqual([['not shown', 'not shown, typed in or out of another formula', 'Data!A1']]);
  expect(await scan(host, { stopped: () => true })).toBeUndefined();
});

test('each sheet is asked for once, however many formulas read it', async () => {
  const source = fakeSource({ cells });
  await scan({ ...host, source });
  expect(source.asked.filter((each) => each.startsWith('used'))).toEqual(['used Works', 'used Data']);
  expect(source.asked.filter((each) => !each.startsWith('used'))).toEqual(['Works 0,0:7,3', 'Data 0,0:0,0']);
});

test('a snapshot gives blanks beyond what is filled', async () => {
  const source = snapshotOf(fakeSource({ cells }));
  expect(await source.cells('Data', { top: 0, left: 0, bottom: 1, right: 1 })).toEqual([['not shown', null], [null, null]]);
  expect(await source.used('Nowhere')).toBeUndefined();
});
