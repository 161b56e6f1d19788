import { CellError, type Cell, type Matrix } from '../../src/functions/kernel/cell';
import { explain } from '../../src/sheet/explain/explain';
import { type FakeSheets, fakeSource } from '../support/fake-sheets';
import { boxText } from '../../src/sheet/xlsx/address';

/** An invented works: two cables in a table, a name, a blank. */
const works: FakeSheets = {
  cells: {
    Schedule: {
      A1: 'ref', B1: 'k', C1: 'csa_mm2', D1: 'runs', E1: 'let_A2s',
      A2: 'W1', B2: 115, C2: 25, D2: null, E2: 8_000_000,
      A3: 'W2', B3: 94, C3: 240, D3: 2, E3: 1_000_000,
      A6: 0,
    },
    "Cable's data": { B2: 143 },
  },
  names: [{ name: 'k_site', text: "'Cable''s data'!$B$2" }, { name: 'loop', text: 'loop' }],
  tables: [{ name: 'cables', sheet: 'Schedule', at: 'A1:E3', columns: ['ref', 'k', 'csa_mm2', 'runs', 'let_A2s'] }],
  spills: { 'Schedule!A6': 'A6:B9' },
};

const at = (formula: string, value: Cell | Matrix, row = 1, traits = { blankArrivesAsZero: false }) =>
  explain({ sheet: 'Schedule', row, column: 6, formula, value }, fakeSource(works), traits);

describe('one call', () => {
  test('value with unit, working, steps, source, defaults', async () => {
    const { calls, precedents, ...whole } = await at('=JW.CABLE_WITHSTAND(B2,C2,D2)', 8265625);
    expect(precedents.map(({ text, value }) => [text, value])).toEqual([['B2', '115'], ['C2', '25'], ['D2', 'blank']]);
    expect(whole).toEqual({ single: true, value: '8.26563E+06 A²s', reason: '', disagrees: '', remark: '' });
    expect(calls).toHaveLength(1);
    expect(calls[0]).toMatchObject({
      name: 'JW.CABLE_WITHSTAND', text: 'JW.CABLE_WITHSTAND(B2,C2,D2)', state: 'worked', times: 1, reason: '', clause: 'IEC 60364-4-43:2023, 434.5.2', assumed: 'runs=1',
      line: '(k·S·n)²; k 115, csa_mm2 25 mm², runs 1; 8.266E+06 A²s', result: '8.26563E+06 A²s',
      given: [{ name: 'k', text: '115' }, { name: 'csa_mm2', text: '25 mm²' }, { name: 'runs', text: '1' }],
      cautions: [],
    });
    expect(calls[0]!.steps).toHaveLength(1);
    expect(calls[0]!.standingCaution).toMatch(/Adiabatic/);
  });
  test('cautions of this call', async () => {
    const { calls } = await at('=JW.CABLE_WITHSTAND(B3,C3,D3)', (94 * 240 * 2) ** 2);
    expect(calls[0]!.cautions).toEqual(['even sharing taken: a fault inside one run loads that run alone']);
  });
  test('the form of the file reads as the form of the page', async () => {
    const { calls } = await at('_xldudf_JW_CABLE_WITHSTAND(B2,_xlfn.SINGLE(C2))', 8265625);
    expect(calls[0]).toMatchObject({ state: 'worked', text: 'JW.CABLE_WITHSTAND(B2,@C2)' });
  });
  test('a bare #NUM! gets its reason', async () => {
    const { calls, reason, value, disagrees } = await at('=JW.CABLE_WITHSTAND(B2,C2*1000)', new CellError('#NUM!'));
    expect(value).toBe('#NUM!');
    expect(reason).toBe('csa_mm2: 25000 is outside above 0, up to 3000 mm²');
    expect(disagrees).toBe('');
    expect(calls[0]).toMatchObject({ state: 'refused', result: '#NUM!', line: '' });
  });
  test('a blank is missing; where blanks arrive as 0 the reason is the one of the cell', async () => {
    expect((await at('=JW.CABLE_WITHSTAND(B2,C9)', new CellError('#N/A'))).reason).toBe('missing: csa_mm2');
    const desktop = await at('=JW.CABLE_WITHSTAND(B2,C9)', new CellError('#VALUE!'), 1, { blankArrivesAsZero: true });
    expect(desktop.reason).toBe('csa_mm2: is blank or zero, takes above 0, up to 3000 mm²');
    expect(desktop.remark).toBe('A blank cell reached the function as 0.');
  });
});

describe('several calls', () => {
  test('outermost first, each with its own working', async () => {
    const { calls, value } = await at('=IF(JW.CABLE_WITHSTAND(B2,C2)>E2,"holds",JW.CABLE_WITHSTAND_CURRENT(B2,C2,1))&JW.CLAUSE("CABLE_WITHSTAND")', 'holdsIEC 60364-4-43:2023, 434.5.2');
    expect(value).toBe('holdsIEC 60364-4-43:2023, 434.5.2');
    expect(calls.map(({ name, state }) => [name, state])).toEqual([['JW.CABLE_WITHSTAND', 'worked'], ['JW.CABLE_WITHSTAND_CURRENT', 'not worked'], ['JW.CLAUSE', 'worked']]);
  });
  test('a call inside another comes after it, and its error passes outwards', async () => {
    const { calls, reason } = await at('=JW.CABLE_WITHSTAND(JW.CABLE_K("Cu","paper"),C2)', new CellError('#VALUE!'));
    expect(calls.map(({ name, state, text }) => [name, state, text])).toEqual([
      ['JW.CABLE_WITHSTAND', 'refused', 'JW.CABLE_WITHSTAND(JW.CABLE_K("Cu","paper"),C2)'],
      ['JW.CABLE_K', 'refused', 'JW.CABLE_K("Cu","paper")'],
    ]);
    expect(calls.map(({ handedOnFrom }) => handedOnFrom)).toEqual(['JW.CABLE_K', undefined]);
    expect(reason).toBe(calls[1]!.reason);
    expect(reason).toMatch(/^insulation: got "paper", takes PVC/);
  });
  test('a call inside a LAMBDA is worked for every row', async () => {
    const { calls, value } = await at('=SUM(MAP(B2:B3,C2:C3,LAMBDA(k,s,JW.CABLE_WITHSTAND(k,s))))', 8265625 + (94 * 240) ** 2);
    expect(calls[0]).toMatchObject({ state: 'worked', times: 2 });
    expect(value).toBe(String(8265625 + (94 * 240) ** 2));
  });
});

describe('what a formula reads', () => {
  const read = async (formula: string, row = 1) => (await at(formula, 1, row)).precedents.map(({ text, sheet, box, value }) => [text, sheet, boxText(box), value]);
  test('addresses, names, columns of tables and spills, each once; names of a LAMBDA or LET are none', async () => {
    expect(await read("=LET(x,B2,JW.CABLE_WITHSTAND(x,'Cable''s data'!B2)+B2+k_site+SUM(cables[k])+SUM(A6#))")).toEqual([
      ['B2', 'Schedule', 'B2', '115'],
      ["'Cable''s data'!B2", "Cable's data", 'B2', '143'],
      ['k_site', "Cable's data", 'B2', '143'],
      ['cables[k]', 'Schedule', 'B2:B3', '2 × 1'],
      ['A6', 'Schedule', 'A6', '0'],
    ]);
  });
  test('what leads nowhere is not among them', async () => {
    expect(await read('=JW.CABLE_WITHSTAND(Nowhere!B2,cables[kk])+loop')).toEqual([]);
  });
});

describe('limits', () => {
  test('every argument outside, not the first alone', async () => {
    const { calls } = await at('=JW.CABLE_WITHSTAND(5,C2*1000,2.5)', new CellError('#NUM!'));
    expect(calls[0]!.faults).toEqual([
      { argument: 'k', words: 'k: 5 is outside 15 to 300 A√s/mm²' },
      { argument: 'csa_mm2', words: 'csa_mm2: 25000 is outside above 0, up to 3000 mm²' },
      { argument: 'runs', words: 'runs: got 2.5, takes a whole number, 1 to 24' },
    ]);
    expect((await at('=JW.CABLE_WITHSTAND(B2,C2)', 8265625)).calls[0]!.faults).toEqual([]);
  });
});

describe('depth', () => {
  test('of each call, counted in calls of ours', async () => {
    const { calls } = await at('=IF(JW.CABLE_WITHSTAND(JW.CABLE_K("Cu",IF(TRUE,JW.CLAUSE("CABLE_K"))),C2)>1,JW.CABLE_K("Al","XLPE"),1)', 1);
    expect(calls.map(({ name, depth }) => [name, depth])).toEqual([['JW.CABLE_WITHSTAND', 0], ['JW.CABLE_K', 1], ['JW.CLAUSE', 2], ['JW.CABLE_K', 0]]);
  });
});

describe('where values come from', () => {
  test.each([
    ['another sheet with a quote in its name', "=JW.CABLE_WITHSTAND('Cable''s data'!B2,25)", 143],
    ['a name', '=JW.CABLE_WITHSTAND(k_site,25)', 143],
    ['a column of a table, this row', '=JW.CABLE_WITHSTAND([@k],25)', 115],
    ['this row as files write it', '=JW.CABLE_WITHSTAND(cables[[#This Row],[k]],25)', 115],
    ['a range picked from', '=JW.CABLE_WITHSTAND(INDEX(cables[k],2),25)', 94],
    ['a whole column', '=JW.CABLE_WITHSTAND(MAX(B:B),25)', 115],
    ['an address in text', '=JW.CABLE_WITHSTAND(INDIRECT("B"&3),25)', 94],
    ['an offset', '=JW.CABLE_WITHSTAND(OFFSET(B1,2,0),25)', 94],
    ['LET', '=LET(k,B3,JW.CABLE_WITHSTAND(k,25))', 94],
  ])('%s', async (_what, formula, k) => {
    const { calls, disagrees } = await explain({ sheet: 'Schedule', row: 1, column: 4, formula, value: (k * 25) ** 2 }, fakeSource(works), { blankArrivesAsZero: false });
    expect(calls[0]!.given[0]).toEqual({ name: 'k', text: String(k) });
    expect(disagrees).toBe('');
  });
  test.each([
    ['=JW.CABLE_WITHSTAND(Nowhere!B2,25)', '#REF!', 'no sheet named Nowhere'],
    ['=JW.CABLE_WITHSTAND(k_other,25)', '#NAME?', 'k_other is not defined in this workbook'],
    ['=JW.CABLE_WITHSTAND(loop,25)', '#NAME?', 'loop is defined by itself'],
    ['=JW.CABLE_WITHSTAND(cables[[#This Row],[kk]],25)', '#REF!', 'no column kk in cables'],
    ['=JW.CABLE_WITHSTAND(trays[k],25)', '#REF!', 'no table named trays'],
  ])('%s is an error with its reason', async (formula, code, words) => {
    const { reason } = await at(formula, new CellError(code as '#REF!'));
    expect(reason).toBe(words);
  });
  test('a range is asked for in one piece, cut to what is filled', async () => {
    const source = fakeSource(works);
    await explain({ sheet: 'Schedule', row: 1, column: 6, formula: '=JW.CABLE_WITHSTAND(MAX(B:B),25)', value: 0 }, source, { blankArrivesAsZero: false });
    expect(source.asked).toEqual(['used Schedule', 'Schedule 0,1:5,1']);
  });
  test('a range too large for a look at one cell is refused in words', async () => {
    const source = { ...fakeSource(works), used: async () => [1_048_575, 16_383] as const };
    const { remark } = await explain({ sheet: 'Schedule', row: 1, column: 6, formula: '=JW.CABLE_WITHSTAND(MAX(A:F),25)', value: 1 }, source, { blankArrivesAsZero: false });
    expect(remark).toBe('The working is not shown: it reads more than 200000 cells.');
  });
});

describe('what a cell shows and what it should', () => {
  test('a value that is not what the sheet gives now is pointed out', async () => {
    expect((await at('=JW.CABLE_WITHSTAND(B2,C2)', 8_000_000)).disagrees).toBe('Worked again from the sheet it gives 8265625; the cell shows 8000000. Recalculate it.');
    expect((await at('=JW.CABLE_WITHSTAND(B2,C2)', new CellError('#NAME?'))).disagrees).toMatch(/the cell shows #NAME\?/);
  });
  test('a difference in later digits is told with all of them', async () => {
    expect((await at('=JW.CABLE_WITHSTAND(B2,C2)/7', 1180803.6)).disagrees).toBe('Worked again from the sheet it gives 1.18080357142857E+06; the cell shows 1.1808036E+06. Recalculate it.');
  });
  test('rounding in the last digits is no disagreement, and complex text counts by value', async () => {
    expect((await at('=JW.CABLE_WITHSTAND(B2,C2)', 8265625.0000001)).disagrees).toBe('');
    expect((await at('=JW.IMP_SERIES("1.05+5.68i","1+1i")', '2.05+6.680i')).disagrees).toBe('');
  });
});

describe('a cell that a formula elsewhere fills', () => {
  const spilled = (value: Cell) => explain({ sheet: 'Schedule', row: 1, column: 6, formula: '=JW.SHOW_STEPS("CABLE_WITHSTAND",B2,C2)', value, part: [2, 1] }, fakeSource(works), { blankArrivesAsZero: false });
  test('is compared with its own part of the spill', async () => {
    expect(await spilled('25 mm²')).toMatchObject({ value: '25 mm²', disagrees: '' });
    expect((await spilled('16 mm²')).disagrees).toBe('Worked again from the sheet it gives 25 mm²; the cell shows 16 mm². Recalculate it.');
  });
});

describe('nothing to explain', () => {
  test.each([
    ['', null, ''],
    ['', 5, 'No formula in this cell.'],
    ['=SUM(B2:B3)', 209, 'No JW function in this formula.'],
    ['=JW.CABLE_STRENGTH(1)', new CellError('#NAME?'), 'No JW function in this formula.'],
    ['="JW.CABLE_K("', 'JW.CABLE_K(', 'No JW function in this formula.'],
  ])('%p', async (formula, value, remark) => {
    expect(await at(formula, value)).toMatchObject({ calls: [], remark });
  });
  test('but what a formula without ours reads is told', async () => {
    expect((await at('=SUM(B2:B3)+B2', 324)).precedents).toMatchObject([{ text: 'B2:B3', sheet: 'Schedule', value: '2 × 1' }, { text: 'B2', sheet: 'Schedule', value: '115' }]);
  });
  test.each([['=JW.CABLE_WITHSTAND(B2,', 'JW.CABLE_WITHSTAND(B2,'], ['=JW.CABLE_WITHSTAND(', 'JW.CABLE_WITHSTAND('], ["=JW.CABLE_WITHSTAND('x", "JW.CABLE_WITHSTAND('x"]])('a broken formula gives words: %s', async (formula, text) => {
    const { calls, remark } = await at(formula, new CellError('#VALUE!'));
    expect(remark).toMatch(/^The formula could not be worked as a whole: /);
    expect(calls[0]).toMatchObject({ state: 'not worked', text });
  });
});
