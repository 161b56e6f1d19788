import { CellError } from '../../../src/functions/kernel/cell';
import { type Edits, checked, edited, schedule, schedulePlanted, told, withStored } from '../../support/checked';

/** One content in the cells of a column. */
const down = (head: string, from: number, to: number, content: Edits[string]): Edits => Object.fromEntries(rows(from, to).map((row) => [`${head}${row}`, content]));
const rows = (from: number, to: number): number[] => Array.from({ length: to - from + 1 }, (_, i) => from + i);
const found = (head: string, at: readonly number[]): string[] => at.map((row) => `${head}${row}`);

test('a correct schedule holds nothing to find, and all of it is checked', () => {
  const { findings, changes, formulas, checked: done, notChecked } = checked(schedule());
  expect(told(findings)).toEqual([]);
  expect(changes).toEqual([]);
  expect([done, notChecked]).toEqual([formulas, 0]);
  expect(formulas).toBeGreaterThan(150);
});

const RUN = '=JW.IMP_CABLE([@length],[@size],[@metal],[@runs],20)';
const FIXED = '=1000*JW.CABLE_WITHSTAND_CURRENT(XLOOKUP(C$8,Cables[cable],Cables[k]),XLOOKUP(C$8,Cables[cable],Cables[size]),$A$9)';

describe('one mistake is found where it was made, and nowhere else', () => {
  test.each<[string, Edits, string[]]>([
    ['a verdict typed by hand', { 'Cables!S11': 'pass' }, ['A verdict-by-hand Cables!S11']],
    ['a fault level typed over its formula', { 'Boards!N11': 12.3 }, ['B constant-over-formula Boards!N11']],
    ['a formula taken out of a column', { 'Cables!T10': null }, ['B constant-over-formula Cables!T10']],
    ['a figure in a filled block', { 'Curves!B12': 30000 }, ['B constant-over-formula Curves!B12']],
    ['a figure in the last row of a filled block', { 'Curves!C17': 900 }, ['B constant-over-formula Curves!C17']],
    ['another formula in one row of a table', { 'Cables!I11': '=IF([@insulation]="PVC",70,95)' }, ['B unlike-neighbours Cables!I11']],
    ['another formula in one row of a block', { 'Curves!B13': '=1000*JW.CABLE_WITHSTAND_CURRENT(143,XLOOKUP(B$8,Cables[cable],Cables[size]),$A13)' }, ['B unlike-neighbours Curves!B13']],
    ['a reference fixed in one row', { 'Curves!C12': FIXED }, ['B fixed-reference Curves!C12']],
    ['a reference fixed in every row', down('Curves!C', 9, 17, FIXED), found('B fixed-reference Curves!C', rows(10, 17))],
    ['a sum that ends a cable early', { 'Sources!B12': '=SUM(Cables!C9:C13)' }, ['B short-range Sources!B12']],
    ['a sum that begins a cable late', { 'Sources!B12': '=SUM(Cables!C10:C14)' }, ['B short-range Sources!B12']],
    ['one of several sums that ends early', { 'Lists!D2': '=SUM(B2:B6)', 'Lists!D3': '=SUM(B3:B7)', 'Lists!D4': '=SUM(B4:B7)', 'Lists!D5': '=SUM(B5:B9)', 'Lists!D6': '=SUM(B6:B10)' }, ['B short-range Lists!D4']],
    ['a length that is text', { 'Cables!C12': '85' }, ['B number-as-text Cables!C12']],
    ['a length with a decimal comma', { 'Boards!C12': '85,5' }, ['B number-as-text Boards!C12']],
    ['c of the greatest fault below the standard’s', { 'Sources!B4': 1 }, ['A voltage-factor Sources!B4']],
    ['c of the least fault above the standard’s', { 'Sources!B5': 1 }, ['A voltage-factor Sources!B5']],
    ['c of the least case in a greatest fault', down('Boards!N', 9, 12, '=JW.FAULT_3PH_MAX([@[Z max]],Un_V,c_min)'), found('A voltage-factor Boards!N', rows(9, 12))],
    ['20 °C in the run of a least fault', down('Boards!I', 9, 12, RUN), found('A temperature-of-case Boards!I', rows(9, 12))],
    ['the temperature left out in the loop of a least fault', down('Cables!L', 9, 14, '=JW.IMP_CABLE([@length],[@earth],[@metal])'), found('A temperature-of-case Cables!L', rows(9, 14))],
    ['the cold run taken for the least fault', down('Cables!N', 9, 14, '=JW.FAULT_LOOP_MIN(JW.IMP_SERIES(XLOOKUP([@from],Boards[board],Boards[Z loop min]),[@[line 20 °C]],[@[earth hot]]),U0_V,c_min)'), found('A temperature-of-case Cables!N', rows(9, 14))],
    ['a hot run taken for the greatest fault', down('Cables!M', 9, 14, '=JW.FAULT_3PH_MAX(JW.IMP_SERIES(XLOOKUP([@from],Boards[board],Boards[Z max]),[@[line hot]]),Un_V,c_max)'), found('A temperature-of-case Cables!M', rows(9, 14))],
    ['a volt drop of cold conductors', down('Cables!T', 9, 14, '=JW.VOLT_DROP(80,0.9,[@[line 20 °C]])'), found('A temperature-of-case Cables!T', rows(9, 14))],
    ['k of one insulation for all', down('Cables!Q', 9, 14, '=JW.CABLE_K([@metal],"PVC",[@size])'), found('A other-k Cables!Q', [9, 11, 12, 14])],
    ['k of another metal as a figure', down('Cables!R', 9, 14, '=JW.CABLE_WITHSTAND(143,[@size])'), found('A other-k Cables!R', [10, 13, 14])],
    ['k of another insulation, typed and used by a plain formula', { 'Curves!F7': 'A√s/mm²', 'Curves!E8': 'insulation', 'Curves!F8': 'factor', 'Curves!G8': 'stands', ...Object.fromEntries(rows(9, 11).flatMap((row) => [[`Curves!E${row}`, 'PVC'], [`Curves!F${row}`, row === 10 ? 143 : 115], [`Curves!G${row}`, `=(F${row}*25)^2`]])) }, ['A other-k Curves!F10']],
    ['pre-arcing of the minor link', down('Selectivity!J', 9, 11, '=XLOOKUP([@minor],Devices[device],Devices[pre-arcing])'), found('A prearcing-on-both-sides Selectivity!J', rows(9, 11))],
    ['pre-arcing against pre-arcing by a formula of the sheet', { 'Devices!H9': '=IF(D11<=D9,"selective","not selective")' }, ['A prearcing-on-both-sides Devices!H9']],
    ['lengths that are said to be in km', { 'Cables!C7': 'km' }, ['J', 'K', 'L'].flatMap((column) => found(`A unit Cables!${column}`, rows(9, 14)))],
    ['a result over which another unit stands', { 'Cables!M7': 'A' }, found('A unit Cables!M', rows(9, 14))],
    ['a voltage beside which another unit stands', { 'Sources!C3': 'kV' }, found('A unit Cables!N', rows(9, 14))],
    ['the ratio asked across types', { 'Devices!B13': 'aM' }, ['C ratio-across-types Selectivity!I11']],
    ['1.6 by a formula of the sheet, across types', { 'Devices!B13': 'aM', ...down('Selectivity!I', 9, 11, '=IF([@ratio]>=1.6,"pass","FAIL")') }, ['A ratio-across-types Selectivity!I11']],
    ['the mean edge of a curve', { 'Curves!E9': 100, 'Curves!F9': 50, 'Curves!E10': 1000, 'Curves!F10': 0.5, 'Curves!H9': '=JW.CURVE_TIME(E9:F10,400,5,"mean")' }, ['A mean-edge Curves!H9']],
    ['a function that is not known', { 'Curves!H9': '=WEBSERVICE("a")' }, ['B not-checked Curves!H9']],
    ['the date of today', { 'Curves!H9': '=TODAY()' }, ['C not-checked Curves!H9']],
  ])('%s', (_, edits, expected) => {
    const { findings } = checked(schedulePlanted(edits));
    expect(told(findings).sort()).toEqual([...expected].sort());
  });
});

/** A column of verdicts taken down at approval, those of today, and a formula that looks at both. */
const APPROVED = (compare: (row: number) => string): Edits => ({
  'Curves!E8': 'approved', 'Curves!F8': 'now', 'Curves!G8': 'stands',
  ...Object.fromEntries(rows(9, 12).flatMap((row) => [[`Curves!E${row}`, 'pass'], [`Curves!F${row}`, `=Cables!S${row}`], [`Curves!G${row}`, compare(row)]])),
});

describe('what is no mistake is not found', () => {
  test.each<[string, Edits]>([
    ['a share of the first row', Object.fromEntries(rows(9, 17).map((row) => [`Curves!E${row}`, `=A${row}/$A$9`]))],
    ['a running sum', Object.fromEntries(rows(9, 17).map((row) => [`Curves!E${row}`, `=SUM($A$9:A${row})`]))],
    ['a moving mean', Object.fromEntries(rows(11, 17).map((row) => [`Curves!E${row}`, `=AVERAGE(A${row - 2}:A${row})`]))],
    ['a total under its column', { 'Curves!A18': '=SUM(A9:A17)', 'Curves!E9': '=MAX(A9:A17)' }],
    ['a first value that the rest is built on', { 'Curves!E9': 1, ...Object.fromEntries(rows(10, 17).map((row) => [`Curves!E${row}`, `=E${row - 1}+1`])) }],
    ['numbers of documents as text', { 'Curves!E9': '0014', 'Curves!E10': '0015', 'Curves!E11': 'B-12' }],
    ['a length with its own unit', { 'Cables!C12': '0.085 km' }],
    ['k of an earth conductor', { 'Curves!E8': 'earth', 'Curves!E9': 35, 'Curves!F9': 'copper', 'Curves!G9': 'PVC', 'Curves!H9': '=JW.CABLE_WITHSTAND(143,E9)' }],
    ['verdicts as they were approved, held against those of today', APPROVED((row) => `=IF(JW.AGREE(E${row},F${row},1)="agrees","untouched","CHANGED")`)],
    ['the same, compared by a plain formula', APPROVED((row) => `=IF(E${row}=F${row},"untouched","CHANGED")`)],
    ['k at a temperature of its own', down('Cables!Q', 9, 14, '=JW.CABLE_K([@metal],[@insulation],[@size],30)')],
  ])('%s', (_, edits) => {
    expect(told(checked(schedulePlanted(edits)).findings)).toEqual([]);
  });
});

describe('a stored value that its formula does not give', () => {
  /** The formula put back under a figure that was typed over it: what hangs on the figure agrees with it. */
  const stale = (value: number): Uint8Array => withStored(edited(schedulePlanted({ 'Boards!N11': value }), { 'Boards!N11': '=JW.FAULT_3PH_MAX([@[Z max]],Un_V,c_max)' }), 'Boards', 'N11', value);

  test('is a finding in its own cell; what follows from it is listed as a change', () => {
    const { findings, changes } = checked(stale(12.3));
    expect(told(findings)).toEqual(['A stored-value Boards!N11']);
    const [{ computed, difference, ...finding }] = findings as [(typeof findings)[0]];
    expect(finding).toMatchObject({ formula: '=JW.FAULT_3PH_MAX(Boards[@[Z max]],Un_V,c_max)', stored: 12.3, clause: expect.stringContaining('IEC 60909-0') });
    expect(difference).toBeCloseTo(100 * (12.3 / (computed as number) - 1), 9);
    expect(changes.map(({ sheet, address }) => `${sheet}!${address}`)).toEqual(expect.arrayContaining(['Boards!N11', 'Boards!P11']));
  });
  test('agrees within the tolerance that was asked for', () => {
    const computed = checked(stale(12.3)).findings[0]!.computed as number;
    expect(told(checked(stale(computed * 1.0005)).findings)).toEqual(['A stored-value Boards!N11']);
    expect(told(checked(stale(computed * 1.0005), { tolerance: 0.001 }).findings)).toEqual([]);
    expect(told(checked(stale(computed * (1 + 1e-11))).findings)).toEqual([]);
  });
  test.each<[string, string, string | number, string]>([
    ['a verdict', 'S11', 'FAIL', 'A'],
    ['a plain figure', 'I11', 95, 'B'],
  ])('%s in cell %s is of its class', (_, address, value, of) => {
    expect(told(checked(withStored(schedule(), 'Cables', address, value)).findings)).toContain(`${of} stored-value Cables!${address}`);
  });
  test('what is left of terms that cancel is no difference; a small value is', () => {
    const book = schedulePlanted({ 'Lists!D2': '=SUM(B2:B6)-SUM(B2:B6)' });
    expect(told(checked(withStored(book, 'Lists', 'D2', -5.5e-15)).findings)).toEqual([]);
    expect(told(checked(withStored(book, 'Lists', 'D2', 1e-9)).findings)).toEqual(['B stored-value Lists!D2']);
  });
  test('one error stored for another is a remark, with both', () => {
    const [finding, ...more] = checked(withStored(schedulePlanted({ 'Lists!D2': '=SQRT(-1)' }), 'Lists', 'D2', new CellError('#VALUE!', ''))).findings;
    expect(more).toEqual([]);
    expect(finding).toMatchObject({ class: 'C', kind: 'stored-value', reason: expect.stringMatching(/#VALUE!.*#NUM!/) });
  });
  test('a wording that differs is a remark', () => {
    expect(told(checked(withStored(schedule(), 'Sources', 'B9', 'worked by an older version')).findings)).toEqual(['C stored-value Sources!B9']);
  });
});
