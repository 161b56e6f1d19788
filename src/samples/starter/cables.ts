import type { Workbook, Worksheet } from 'exceljs';
import { orNone } from '../formula-text';
import { FIRST_FREE_ROW, printSetUp, titleBlock } from '../frame';
import { type Column, type WorkedColumns, addTable, carriedHeading } from '../table';
import { exampleLook, given, starterRows, where, whereFilled } from './blank-rows';
import { BLOCK, DOCUMENT, TOLERANCE, pointsOf } from './document';

const board = (column: string): string => `XLOOKUP([@from],Boards[board],Boards[${column}])`;
const device = (column: string): string => `XLOOKUP([@device],Devices[device],Devices[${column}])`;
const deviceData = (column: string): string => `IF(${device(column)}="","",${device(column)})`;
const byKind = (link: string, breaker: string): string => `IF(${device('kind')}="gG",${link},${breaker})`;
const CURVE = pointsOf('time', device('curve'));
const OVERLOAD = '[@[Ib sizing]],[@In],[@Iz],[@I2]';
const WITHSTAND = '[@[let-through]],[@[k²S²]],[@[Ik3 max]],[@[Ik3 max]]';

const pair = (name: string, test: string, args: string, note: string): Column[] => [
  { name, width: 10, verdict: true, formula: `JW.${test}_TEST(${args})`, note },
  { name: `${name} %`, unit: '%', width: 8, format: '0', formula: `IF([@[${name}]]="not shown","–",JW.${test}_MARGIN(${args}))` },
];

const COLUMNS: readonly Column[] = [
  { name: 'cable', width: 8 },
  { name: 'from', width: 9, list: 'list_board' },
  { name: 'to', width: 14 },
  { name: 'load', unit: 'kW', width: 8, format: '0.0', between: [0.01, 20000] },
  { name: 'pf', unit: '–', width: 7, format: '0.00', between: [0.1, 1] },
  { name: 'eff', unit: '–', width: 7, format: '0.00', between: [0.1, 1], note: 'Blank: 1.' },
  { name: 'third', unit: '%', width: 7, format: '0', between: [0, 100], note: 'Third harmonic in the lines; blank: none.' },
  { name: 'route', unit: 'm', width: 8, format: '0', between: [0.1, 20000] },
  { name: 'tails', unit: 'm', width: 7, format: '0', between: [0, 100] },
  { name: 'metal', width: 12, list: 'list_metal' },
  { name: 'insulation', width: 10, list: 'list_insulation' },
  { name: 'size', unit: 'mm²', width: 7, list: 'list_size' },
  { name: 'runs', unit: '–', width: 6, between: [1, 24] },
  { name: 'earth', unit: 'mm²', width: 7, list: 'list_size' },
  { name: 'earth in', width: 10, list: 'list_where', note: 'Where the earth conductor lies.' },
  { name: 'method', width: 8, note: 'Of installation, from your licensed table.' },
  { name: 'Ca', unit: '–', width: 6, format: '0.00', between: [0.1, 1.5] },
  { name: 'Cg', unit: '–', width: 6, format: '0.00', between: [0.1, 1.5] },
  { name: 'Ci', unit: '–', width: 6, format: '0.00', between: [0.1, 1.5] },
  { name: 'Cc', unit: '–', width: 6, format: '0.00', between: [0.1, 1.5] },
  { name: 'It', unit: 'A', width: 7, format: '0', between: [1, 5000], note: 'Tabulated current of one run, from your licensed table.' },
  { name: 'neutral It', unit: 'A', width: 8, format: '0', note: 'Rating of the neutral conductor.' },
  { name: 'device', width: 8, list: 'list_device' },
  { name: 'system', width: 8, list: 'list_system' },
  { name: 'circuit', width: 12, list: 'list_circuit' },
  { name: 'drop before', unit: '%', width: 8, format: '0.0', between: [0, 20] },
  { name: 'drop limit', unit: '%', width: 8, format: '0.0', between: [0.1, 20] },
  ...whereFilled('cable', [
    { name: 'length', unit: 'm', width: 8, format: '0.0', formula: '1.05*([@route]+[@tails])', note: 'Route and tails, and 5 %.' },
    { name: 'Ib', unit: 'A', width: 8, format: '0.0', formula: `JW.LOAD_CURRENT([@load],[@pf],Un_V,3,${given('eff')})` },
    { name: 'Ib sizing', unit: 'A', width: 8, format: '0.0', formula: 'IF([@third]="",[@Ib],JW.HARMONIC_CURRENT([@Ib],[@third]))' },
    { name: 'neutral', unit: 'A', width: 8, format: '0.0', formula: 'IF([@third]="","–",JW.HARMONIC_CURRENT([@Ib],[@third],"neutral"))' },
    { name: 'neutral fit', width: 10, verdict: true, formula: `IF(ISNUMBER([@neutral]),JW.LIMIT_TEST([@neutral],${given('neutral It')}),"–")` },
    { name: 'In', unit: 'A', width: 7, format: '0', formula: byKind(device('rated'), device('Ir')), note: 'Of the device; of a breaker its Ir.' },
    { name: 'Iz', unit: 'A', width: 8, format: '0.0', formula: where('It', `JW.CABLE_RATING([@It],${given('Ca')},${given('Cg')},${given('Ci')},${given('Cc')},[@runs])`) },
    { name: 'I2', unit: 'A', width: 8, format: '0', formula: `JW.CONVENTIONAL_CURRENT([@In],${device('kind')})` },
    ...pair('overload', 'OVERLOAD', OVERLOAD, 'Ib, In, Iz and I2 against 1.45 Iz.'),
    { name: 'drop', unit: 'V', width: 8, format: '0.00', formula: 'JW.VOLT_DROP([@Ib],[@pf],[@[line hot]])' },
    { name: 'drop %', unit: '%', width: 8, format: '0.00', formula: '100*[@drop]/Un_V' },
    { name: 'drop total', unit: '%', width: 8, format: '0.00', formula: '[@[drop before]]+[@[drop %]]' },
    { name: 'drop fit', width: 10, verdict: true, formula: `JW.LIMIT_TEST([@[drop total]],${given('drop limit')})` },
    { name: 'Ik3 max', unit: 'kA', width: 8, format: '0.00', formula: board('Ik3 max'), note: 'At the board that feeds the cable.' },
    { name: 'Ik3 end', unit: 'kA', width: 8, format: '0.00', formula: `JW.FAULT_3PH_MAX(JW.IMP_SERIES(${board('Z max')},[@[line 20 °C]]),Un_V,c_max)` },
    { name: 'Ik1 min', unit: 'kA', width: 8, format: '0.000', formula: 'JW.FAULT_LOOP_MIN([@loop],U0_V,c_min)', note: 'Least earth fault at the far end.' },
    { name: 'allowed', unit: 's', width: 8, format: '0.00', formula: 'JW.DISCONNECT_LIMIT([@system],[@circuit],U0_V)' },
    { name: 'loop Z', unit: 'mΩ', width: 8, format: '0.0', formula: 'JW.IMP_PART([@loop],"Z")' },
    {
      name: 'loop limit', unit: 'mΩ', width: 8, format: '0.0', note: 'Where the device just trips in the time allowed, at its slow edge.',
      formula: `JW.LOOP_MAX(${byKind(`JW.CURVE_CURRENT(${CURVE},[@allowed],${TOLERANCE},"slow")`, `1.2*IF(${device('Isd')}="off",${device('Ii')},${device('Isd')})`)},U0_V,c_min)`,
    },
    { name: 'loop cold', unit: 'mΩ', width: 8, format: '0.0', formula: '0.8*[@[loop limit]]', note: 'Limit for a reading taken cold.' },
    { name: 'loop fit', width: 10, verdict: true, formula: 'JW.LIMIT_TEST([@[loop Z]],[@[loop limit]])' },
    {
      name: 'trips in', unit: 's', width: 8, format: '0.000', note: 'Slow edge at Ik1 min.',
      formula: byKind(`JW.CURVE_TIME(${CURVE},1000*[@[Ik1 min]],${TOLERANCE},"slow")`, `JW.TRIP_TIME(1000*[@[Ik1 min]],${['Ir', 'tr', 'Isd', 'tsd', 'Ii', 'ii s'].map(deviceData).join(',')},"slow")`),
    },
    { name: 'in time', width: 10, verdict: true, formula: 'JW.LIMIT_TEST([@[trips in]],[@allowed])' },
    { name: 'k', unit: 'A√s/mm²', width: 8, format: '0', formula: 'JW.CABLE_K([@metal],[@insulation],[@size])' },
    { name: 'k²S²', unit: 'A²s', width: 14, format: '#,##0', formula: 'JW.CABLE_WITHSTAND([@k],[@size])', note: 'One run: a fault inside one cable loads it alone.' },
    { name: 'let-through', unit: 'A²s', width: 13, format: '#,##0', formula: device('let-through') },
    ...pair('withstand', 'LETTHROUGH', WITHSTAND, 'Device at the level of the same board.'),
    { name: 'earth k', unit: 'A√s/mm²', width: 8, format: '0', formula: `JW.EARTH_K([@metal],[@[earth in]],[@insulation],[@earth])` },
    { name: 'earth let', unit: 'A²s', width: 13, format: '#,##0', formula: 'JW.LETTHROUGH_PROSPECTIVE([@[Ik1 min]],[@[trips in]])', note: 'Ik1 min for its clearing time.' },
    { name: 'earth fit', width: 10, verdict: true, formula: 'JW.LETTHROUGH_TEST([@[earth let]],JW.CABLE_WITHSTAND([@[earth k]],[@earth]),[@[Ik1 min]],[@[Ik1 min]])' },
    { name: 'earth least', unit: 'mm²', width: 8, format: '0.0', formula: 'JW.CABLE_MIN_SIZE([@[earth let]],[@[earth k]])' },
    { name: 'earth by table', unit: 'mm²', width: 8, format: '0.0', formula: 'JW.EARTH_SIZE_TABLE([@size])' },
    { name: 'earth end', unit: '°C', width: 8, format: '0', formula: 'JW.CABLE_FINAL_TEMP([@[earth let]],[@earth],IF([@[earth in]]="separate",30,[@hot]),[@metal])' },
    { name: 'stands', unit: 'kA', width: 8, format: '0.00', formula: where('trips in', 'JW.CABLE_WITHSTAND_CURRENT([@k],[@size],[@[trips in]])'), note: 'Adiabatic, for the time at Ik1 min.' },
    { name: 'ε', unit: '–', width: 7, format: '0.000', formula: 'JW.NON_ADIABATIC_FACTOR([@size],[@[trips in]],[@metal],[@insulation])', note: 'What heat leaving the conductor adds to the current it stands.' },
    { name: 'working', width: 40, words: true, formula: `JW.SHOW_WORKING("LETTHROUGH_TEST",${WITHSTAND})` },
    { name: 'assumed', width: 20, words: true, formula: orNone(`JW.ASSUMED("CABLE_RATING",${given('It')},${given('Ca')},${given('Cg')},${given('Ci')},${given('Cc')},[@runs])`) },
    { name: 'caution', width: 34, words: true, formula: orNone(`JW.CAUTION("LETTHROUGH_TEST",${WITHSTAND})`) },
    { name: 'clause', width: 26, words: true, formula: 'JW.CLAUSE("LETTHROUGH_TEST")' },
  ]),
];

const CARRIED: readonly Column[] = whereFilled('cable', [
  { name: 'hot', unit: '°C', formula: 'IF([@insulation]="PVC",70,90)', note: 'Conductor at full load.' },
  { name: 'line 20 °C', unit: 'mΩ', formula: 'JW.IMP_CABLE([@length],[@size],[@metal],[@runs],20)' },
  { name: 'line hot', unit: 'mΩ', formula: 'JW.IMP_CABLE([@length],[@size],[@metal],[@runs],[@hot])' },
  { name: 'earth hot', unit: 'mΩ', formula: 'JW.IMP_CABLE([@length],[@earth],[@metal],[@runs],[@hot])' },
  { name: 'loop', unit: 'mΩ', formula: `JW.IMP_SERIES(${board('Z loop min')},[@[line hot]],[@[earth hot]])` },
]).map((column) => ({ ...column, width: 16, carried: true as const }));

const EXAMPLES = [
  ['C01', 'MSB', 'Fan house', 160, 0.86, 0.95, '', 90, 6, 'copper', 'XLPE', 240, 1, 120, 'in cable', 'E', 0.94, 0.9, '', '', 607, '', 'F1', 'TN', 'distribution', 0.5, 4],
] as const;

/** The cable schedule. */
export function addCables(workbook: Workbook, worked: WorkedColumns): Worksheet {
  const sheet = workbook.addWorksheet('Cables', { properties: { tabColor: { argb: 'FF5C8A4A' } } });
  titleBlock(sheet, 'CABLES', DOCUMENT, 26, BLOCK);
  const columns = [...COLUMNS, ...CARRIED];
  const last = addTable(sheet, { name: 'Cables', at: { row: FIRST_FREE_ROW }, columns, rows: starterRows(columns, EXAMPLES), inputLook: exampleLook(EXAMPLES.length) }, worked);
  carriedHeading(sheet, FIRST_FREE_ROW - 1, COLUMNS.length + 1);
  sheet.views = [{ state: 'frozen', xSplit: 1, ySplit: FIRST_FREE_ROW + 1 }];
  printSetUp(sheet, DOCUMENT, { rows: last, columns: COLUMNS.length, pagesWide: 3 }, [FIRST_FREE_ROW, FIRST_FREE_ROW + 1]);
  return sheet;
}
