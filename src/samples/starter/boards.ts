import type { Workbook, Worksheet } from 'exceljs';
import { fileFormula, orNone } from '../formula-text';
import { FIRST_FREE_ROW, printSetUp, titleBlock } from '../frame';
import { LABEL, WORDS, dress } from '../look';
import { type Column, type WorkedColumns, addTable, carriedHeading } from '../table';
import { exampleLook, given, starterRows, where, whereFilled } from './blank-rows';
import { BLOCK, DOCUMENT, TOLERANCE, pointsOf } from './document';

const COLD = 'Boards[[cold board]:[cold Z]]';
const HOT = 'Boards[[hot board]:[hot return Z]]';
const LOOP = 'Boards[[loop board]:[loop Z]]';
const greatest = (quantity: string, source = 'Zs_max'): string => `JW.NET_RADIAL_AT(${COLD},${source},[@board],"${quantity}",Un_V,c_max)`;
const least = (quantity: string): string => `JW.NET_RADIAL_AT(${HOT},Zs_min,[@board],"${quantity}",Un_V,c_min)`;
const MOTORS = '[@[motors kW]],[@[motor pf]],[@[motor eff]]';
const withMotors = (formula: string, without: string): string => `IF([@[motors kW]]="",${without},${formula})`;
const motorLevel = `JW.FAULT_3PH_MAX(JW.IMP_MOTOR(${MOTORS},Un_V),Un_V,c_max)`;
const ICW = `[@[Ik3 max]],[@[cleared in]],${given('Icw')},${given('for')}`;
const IPK = `[@ip],IF([@Icw]="","",JW.PEAK_RATIO([@Icw],"assembly")*[@Icw])`;
const ICC = `[@[Ik3 max]],${given('Icc')},${given('tested with')},${given('fitted')}`;
const device = (column: string): string => `XLOOKUP([@[cleared by]],Devices[device],Devices[${column}])`;
const arcTime = (current: string): string =>
  `IF(${device('kind')}="gG",JW.ARC_TIME_FUSE(${pointsOf('time', device('curve'))},${current},${TOLERANCE}),` +
  `1000*JW.TRIP_TIME(1000*${current},${['Ir', 'tr', 'Isd', 'tsd', 'Ii', 'ii s'].map(device).join(',')},"slow"))`;
const energy = (ms: string, reduced: string): string => `[@[Ik3 max]],${ms},[@gap],[@distance],[@electrodes],Un_V,[@[box factor]],${reduced}`;
const boundary = (ms: string, reduced: string): string => `IFERROR(JW.ARC_BOUNDARY([@[Ik3 max]],${ms},[@gap],[@electrodes],Un_V,[@[box factor]],${reduced}),305)`;

const verdictColumns = (name: string, test: string, args: string, note: string): Column[] => [
  { name, width: 10, verdict: true, formula: `JW.${test}_TEST(${args})`, note },
  { name: `${name} %`, unit: '%', width: 8, format: '0', formula: `IF([@[${name}]]="not shown","–",JW.${test}_MARGIN(${args}))` },
];

const COLUMNS: readonly Column[] = [
  { name: 'board', width: 10 },
  { name: 'fed from', width: 10, note: 'A board of this table, or source.' },
  { name: 'length', unit: 'm', width: 8, between: [0.1, 20000] },
  { name: 'size', unit: 'mm²', width: 7, list: 'list_size' },
  { name: 'metal', width: 12, list: 'list_metal' },
  { name: 'runs', unit: '–', width: 6, between: [1, 24] },
  { name: 'return', unit: 'mm²', width: 8, list: 'list_size', note: 'Earth conductor of the run, of the same metal and as many runs.' },
  { name: 'motors kW', unit: 'kW', width: 8, format: '0', between: [0.1, 20000], note: 'Running motors at the board; blank where there are none.' },
  { name: 'motor pf', unit: '–', width: 7, format: '0.00', between: [0.1, 1] },
  { name: 'motor eff', unit: '–', width: 7, format: '0.00', between: [0.1, 1] },
  { name: 'Icw', unit: 'kA', width: 7, format: '0', between: [0.1, 300] },
  { name: 'for', unit: 's', width: 6, format: '0.0', between: [0.01, 3] },
  { name: 'cleared in', unit: 's', width: 8, format: '0.00', between: [0.001, 3] },
  { name: 'Icc', unit: 'kA', width: 7, format: '0', between: [0.1, 300], note: 'Conditional rating of the assembly, if it has one.' },
  { name: 'tested with', width: 16 },
  { name: 'fitted', width: 16 },
  { name: 'span', unit: 'm', width: 7, format: '0.00', between: [0.01, 10], note: 'Bars between two supports; blank leaves the force out.' },
  { name: 'spacing', unit: 'm', width: 8, format: '0.000', between: [0.001, 2] },
  { name: 'strength', unit: 'N', width: 9, format: '#,##0', note: 'Of the supports, from their sheet.' },
  { name: 'gap', unit: 'mm', width: 7, format: '0', between: [6.35, 76.2], note: 'Arc between the bars; blank leaves the arc out.' },
  { name: 'electrodes', width: 9, list: 'list_electrodes' },
  { name: 'width', unit: 'mm', width: 7, format: '0', between: [1, 3000] },
  { name: 'height', unit: 'mm', width: 7, format: '0', between: [1, 3000] },
  { name: 'depth', unit: 'mm', width: 7, format: '0', between: [1, 3000] },
  { name: 'distance', unit: 'mm', width: 8, format: '0', between: [305, 5000] },
  { name: 'cleared by', width: 9, list: 'list_device', note: 'Device that clears an arc at the board.' },
  ...whereFilled('board', [
    { name: 'Z greatest', unit: 'mΩ', width: 9, format: '0.00', formula: 'JW.IMP_PART([@[Z max]],"Z")' },
    { name: 'Z least', unit: 'mΩ', width: 9, format: '0.00', formula: 'JW.IMP_PART([@[Z min]],"Z")', note: 'Behind the least fault.' },
    { name: 'Ik3 max', unit: 'kA', width: 8, format: '0.00', formula: greatest('Ik3'), note: 'Network, without motors.' },
    { name: 'motor share', unit: '%', width: 7, format: '0.0', formula: withMotors(`JW.FAULT_MOTOR_SHARE(${MOTORS},[@[Ik3 max]],Un_V)`, '"–"'), note: 'Over 1 % they must be counted.' },
    { name: 'with motors', unit: 'kA', width: 8, format: '0.00', formula: withMotors(`JW.FAULT_3PH_MAX(JW.IMP_PARALLEL([@[Z max]],JW.IMP_MOTOR(${MOTORS},Un_V)),Un_V,c_max)`, '[@[Ik3 max]]') },
    { name: 'R/X', unit: '–', width: 7, format: '0.000', formula: 'JW.IMP_PART([@[Z max]],"R/X")' },
    { name: 'pf', unit: '–', width: 7, format: '0.00', formula: 'JW.IMP_PART([@[Z max]],"pf")' },
    { name: 'κ', unit: '–', width: 7, format: '0.000', formula: greatest('kappa') },
    { name: 'ip', unit: 'kA peak', width: 8, format: '0.0', formula: `JW.FAULT_PEAK([@[Ik3 max]],[@[R/X]],"plain",${withMotors(motorLevel, '"0"')})`, note: 'Network and motors.' },
    { name: 'Ith', unit: 'kA', width: 8, format: '0.00', formula: where('cleared in', 'JW.FAULT_THERMAL([@[Ik3 max]],[@κ],[@[cleared in]])'), note: 'Thermal equivalent over the clearing time.' },
    { name: 'Ik3 min', unit: 'kA', width: 8, format: '0.00', formula: least('Ik3') },
    { name: 'Ik2 min', unit: 'kA', width: 8, format: '0.00', formula: least('Ik2') },
    { name: 'Ik1 min', unit: 'kA', width: 8, format: '0.00', formula: least('Ik1') },
    { name: 'uk −10 %', unit: 'kA', width: 8, format: '0.00', formula: greatest('Ik3', 'Zs_low'), note: 'Sensitivity, not for the record.' },
  ]),
  ...whereFilled('cleared in', [
    ...verdictColumns('short-time', 'SHORTTIME', ICW, 'Against Icw.'),
    ...verdictColumns('peak', 'LIMIT', IPK, 'Against the peak that belongs to Icw.'),
  ]),
  ...whereFilled('Icc', verdictColumns('conditional', 'CONDITIONAL', ICC, 'Against Icc, with the device that it was tested with.')),
  ...whereFilled('span', [
    { name: 'bar force', unit: 'N', width: 9, format: '#,##0', formula: 'JW.BUSBAR_FORCE([@ip],[@span],[@spacing])' },
    ...verdictColumns('force', 'LIMIT', `[@[bar force]],${given('strength')}`, 'Against the strength of the supports.'),
  ]),
  ...whereFilled('gap', [
    { name: 'Iarc full', unit: 'kA', width: 8, format: '0.00', formula: 'JW.ARC_CURRENT([@[Ik3 max]],[@gap],[@electrodes],Un_V)' },
    { name: 'Iarc reduced', unit: 'kA', width: 8, format: '0.00', formula: 'JW.ARC_CURRENT([@[Ik3 max]],[@gap],[@electrodes],Un_V,TRUE)' },
    { name: 'box factor', unit: '–', width: 7, format: '0.000', formula: 'JW.ARC_BOX_FACTOR([@width],[@height],[@depth],[@gap],[@electrodes],Un_V)' },
    { name: 'time full', unit: 'ms', width: 8, format: '0.0', formula: arcTime('[@[Iarc full]]') },
    { name: 'time reduced', unit: 'ms', width: 8, format: '0.0', formula: arcTime('[@[Iarc reduced]]') },
    { name: 'E full', unit: 'J/cm²', width: 8, format: '0.0', formula: `JW.ARC_ENERGY(${energy('[@[time full]]', 'FALSE')})` },
    { name: 'E reduced', unit: 'J/cm²', width: 8, format: '0.0', formula: `JW.ARC_ENERGY(${energy('[@[time reduced]]', 'TRUE')})` },
    { name: 'E worse', unit: 'J/cm²', width: 8, format: '0.0', formula: 'MAX([@[E full]],[@[E reduced]])' },
    { name: 'boundary', unit: 'mm', width: 9, format: '[<=305]"≤ "0;0', formula: `IF(ISNUMBER([@[E worse]]),MAX(${boundary('[@[time full]]', 'FALSE')},${boundary('[@[time reduced]]', 'TRUE')}),[@[E worse]])` },
  ]),
  ...whereFilled('board', [
    { name: 'working', width: 40, words: true, formula: `JW.SHOW_WORKING("NET_RADIAL_AT",${COLD},Zs_max,[@board],"Ik3",Un_V,c_max)` },
    { name: 'assumed', width: 20, words: true, formula: orNone(`JW.ASSUMED("NET_RADIAL_AT",${COLD},Zs_max,[@board],"Ik3",Un_V,c_max)`) },
    { name: 'caution', width: 34, words: true, formula: orNone(`JW.CAUTION("NET_RADIAL_AT",${COLD},Zs_max,[@board],"Ik3",Un_V,c_max)`) },
    { name: 'clause', width: 26, words: true, formula: 'JW.CLAUSE("NET_RADIAL_AT")' },
  ]),
];

const CARRIED: readonly Column[] = whereFilled('board', [
  { name: 'cold board', formula: '[@board]' },
  { name: 'cold fed from', formula: '[@[fed from]]' },
  { name: 'cold Z', unit: 'mΩ', formula: 'JW.IMP_CABLE([@length],[@size],[@metal],[@runs],20)', note: 'Run at 20 °C.' },
  { name: 'hot board', formula: '[@board]' },
  { name: 'hot fed from', formula: '[@[fed from]]' },
  { name: 'hot Z', unit: 'mΩ', formula: 'JW.IMP_CABLE([@length],[@size],[@metal],[@runs],90)', note: 'Conductors at 90 °C for the least fault.' },
  { name: 'hot return Z', unit: 'mΩ', formula: 'JW.IMP_CABLE([@length],[@return],[@metal],[@runs],90)' },
  { name: 'loop board', formula: '[@board]' },
  { name: 'loop fed from', formula: '[@[fed from]]' },
  { name: 'loop Z', unit: 'mΩ', formula: 'JW.IMP_SERIES([@[hot Z]],[@[hot return Z]])' },
  { name: 'Z max', unit: 'mΩ', formula: greatest('Z') },
  { name: 'Z min', unit: 'mΩ', formula: least('Z') },
  { name: 'Z loop min', unit: 'mΩ', formula: `JW.NET_RADIAL_AT(${LOOP},Zs_min,[@board],"Z",Un_V,c_min)` },
]).map((column) => ({ ...column, width: 16, carried: true as const }));

const EXAMPLES = [
  ['MSB', 'source', 8, 630, 'copper', 4, 630, 280, 0.86, 0.93, 65, 1, 0.3, '', '', '', 0.4, 0.11, 20000, 32, 'VCBB', 800, 1000, 400, 610, 'Q1'],
] as const;

/** Boards as a tree, with assembly, force and arc. */
export function addBoards(workbook: Workbook, worked: WorkedColumns): Worksheet {
  const sheet = workbook.addWorksheet('Boards', { properties: { tabColor: { argb: 'FF4E7A8C' } } });
  titleBlock(sheet, 'BOARDS', DOCUMENT, 26, BLOCK);
  const units = FIRST_FREE_ROW + 2;
  const columns = [...COLUMNS, ...CARRIED];
  const last = addTable(sheet, { name: 'Boards', at: { row: units }, columns, rows: starterRows(columns, EXAMPLES), inputLook: exampleLook(EXAMPLES.length) }, worked);
  workbook.definedNames.add(`'Boards'!$A$${units + 2}:$A$${last}`, 'list_board');
  dress(sheet.getCell(FIRST_FREE_ROW, 1), LABEL).value = 'In order?';
  sheet.mergeCells(FIRST_FREE_ROW, 2, FIRST_FREE_ROW, 10);
  dress(sheet.getCell(FIRST_FREE_ROW, 2), WORDS).value = { formula: fileFormula(`JW.NET_CHECK(${HOT})`, 'Boards') };
  carriedHeading(sheet, units - 1, COLUMNS.length + 1, 'Trees for NET_RADIAL_AT and impedances as complex text, carried with all digits; not printed:');
  sheet.views = [{ state: 'frozen', xSplit: 1, ySplit: units + 1 }];
  printSetUp(sheet, DOCUMENT, { rows: last, columns: COLUMNS.length, pagesWide: 3 }, [units, units + 1]);
  return sheet;
}
