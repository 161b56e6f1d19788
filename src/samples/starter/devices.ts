import type { Workbook, Worksheet } from 'exceljs';
import { orNone } from '../formula-text';
import { FIRST_FREE_ROW, printSetUp, titleBlock } from '../frame';
import { type Column, type WorkedColumns, addTable } from '../table';
import { exampleLook, given, own, starterRows, whereFilled } from './blank-rows';
import { BLOCK, DOCUMENT, TOLERANCE, pointsOf } from './document';

const forLink = (formula: string): string => `IF([@kind]="gG",${formula},"–")`;
const forBreaker = (formula: string): string => `IF([@kind]="breaker",${formula},"–")`;
const board = (column: string): string => `XLOOKUP([@board],Boards[board],Boards[${column}])`;
const major = (column: string): string => `XLOOKUP([@upstream],Devices[device],Devices[${column}])`;
const majorData = (column: string): string => `IF(${major(column)}="","",${major(column)})`;
const SETTINGS = ['Ir', 'tr', 'Isd', 'tsd', 'Ii', 'ii s'].map(given).join(',');
const BREAKING = `[@[Ik3 max]],${given('Icu')},${given('Ics')},[@need],[@pf]`;
const MAKING = `[@ip],${given('Icu')},${given('Icm')}`;
const WAITING = `[@[Ik3 max]],[@[clears in]],${given('Icw')},${given('for')}`;
const CONDITIONAL = `[@[Ik3 max]],${given('conditional')},${given('tested with')},[@rated]&" A "&[@type]`;
const MILLIVOLT = `[@[drop mV]],[@[at A]],${given('pole')}`;

const pair = (name: string, test: string, args: string, wrap: (formula: string) => string, note: string): Column[] => [
  { name, width: 10, verdict: true, formula: wrap(`JW.${test}_TEST(${args})`), note },
  { name: `${name} %`, unit: '%', width: 8, format: '0', formula: `IF(OR(${own(name)}="–",${own(name)}="not shown"),"–",JW.${test}_MARGIN(${args}))` },
];
/** Links above links, and breakers above anything. */
const underLink = (formula: string): string => `IF([@upstream]="","–",IF(AND([@kind]="gG",${major('kind')}="gG"),${formula},"–"))`;
const underBreaker = (formula: string): string => `IF([@upstream]="","–",IF(${major('kind')}="breaker",${formula},"–"))`;
const linkUnderBreaker = (formula: string): string => underBreaker(forLink(formula));
const range = (name: string): string =>
  underLink(`JW.SELECT_RANGES_AT(${pointsOf('time', '[@curve]')},${TOLERANCE},${pointsOf('time', major('curve'))},${TOLERANCE},[@[Ik3 max]],"${name}")`);
const wherePole = (formula: string): string => `IF([@pole]="","–",${formula})`;

/** The columns that typed cells fill stand first; the columns that other rows look up are typed, so nothing runs in a circle. */
const COLUMNS: readonly Column[] = [
  { name: 'device', width: 9 },
  { name: 'board', width: 9, list: 'list_board' },
  { name: 'kind', width: 9, list: 'list_kind' },
  { name: 'rated', unit: 'A', width: 7, format: '0', between: [0.5, 6300] },
  { name: 'type', width: 12, note: 'Of links: gG and the range.' },
  { name: 'curve', unit: 'no.', width: 7, between: [1, 3], note: 'Number of the link’s curve on the sheet Points.' },
  { name: 'pre-arcing', unit: 'A²s', width: 11, format: '#,##0', note: 'Of the link, at the level of the device below it.' },
  { name: 'sheet', unit: 'V', width: 7, format: '0', between: [50, 1500] },
  { name: 'Ir', unit: 'A', width: 7, format: '0', between: [0.5, 10000] },
  { name: 'tr', unit: 's', width: 6, format: '0', between: [0.1, 1000], note: 'At 6 times Ir.' },
  { name: 'Isd', unit: 'A', width: 7, format: '0', note: 'off where the stage is off.' },
  { name: 'tsd', unit: 's', width: 7, format: '0.00', between: [0.001, 10] },
  { name: 'Ii', unit: 'A', width: 7, format: '0', note: 'off where the stage is off.' },
  { name: 'ii s', unit: 's', width: 7, format: '0.00', between: [0.001, 1] },
  { name: 'Ig', unit: 'A', width: 7, format: '0', note: 'Earth-fault stage; blank where there is none.' },
  { name: 'tg', unit: 's', width: 7, format: '0.00', between: [0.001, 10] },
  { name: 'Icu', unit: 'kA', width: 7, format: '0', note: 'Of a link: its rated breaking capacity.' },
  { name: 'Ics', unit: 'kA', width: 7, format: '0' },
  { name: 'Icm', unit: 'kA peak', width: 7, format: '0', note: 'Blank: by the ratio of the standard from Icu.' },
  { name: 'Icw', unit: 'kA', width: 7, format: '0' },
  { name: 'for', unit: 's', width: 6, format: '0.0', between: [0.01, 3] },
  { name: 'conditional', unit: 'kA', width: 9, format: '0' },
  { name: 'tested with', width: 16 },
  { name: 'need', width: 9, list: 'list_need' },
  { name: 'upstream', width: 9, list: 'list_device' },
  { name: 'pair tested', unit: 'kA', width: 8, format: '0', note: 'Back-up or selectivity of the pair to this level, from the maker’s table.' },
  { name: 'pole', unit: 'mΩ', width: 7, format: '0.00', note: 'Resistance of one pole when new; blank leaves the pole out.' },
  { name: 'drop mV', unit: 'mV', width: 8, format: '0' },
  { name: 'at A', unit: 'A', width: 7, format: '0' },
  ...whereFilled('device', [
    { name: 'points', width: 12, formula: forLink(`JW.CURVE_CHECK(${pointsOf('time', '[@curve]')})`), note: 'Are the curve’s points in order?' },
    { name: 'Ik3 max', unit: 'kA', width: 8, format: '0.00', formula: board('Ik3 max') },
    { name: 'ip', unit: 'kA peak', width: 8, format: '0.0', formula: board('ip') },
    { name: 'pf', unit: '–', width: 7, format: '0.00', formula: board('pf') },
    { name: 'clears in', unit: 's', width: 8, format: '0.000', formula: forBreaker(`JW.TRIP_TIME(1000*[@[Ik3 max]],${SETTINGS},"slow")`), note: 'Breakers that do not limit.' },
    { name: 'trips at Ik1', unit: 's', width: 9, format: '0.000', formula: `IF([@kind]="gG",JW.CURVE_TIME(${pointsOf('time', '[@curve]')},1000*${board('Ik1 min')},${TOLERANCE},"slow"),JW.TRIP_TIME(1000*${board('Ik1 min')},${SETTINGS},"slow"))`, note: 'Slow edge at the least earth fault of the board.' },
    { name: 'earth stage', unit: 's', width: 9, format: '0.000', formula: `IF([@Ig]="","–",JW.TRIP_TIME(1000*${board('Ik1 min')},[@Ir],[@tr],[@Ig],[@tg],"off","","slow"))` },
    { name: 'cut-off', unit: 'kA peak', width: 8, format: '0.0', formula: forLink(`JW.CUTOFF_POINTS(${pointsOf('cutoff', '[@curve]')},[@[Ik3 max]],[@sheet],Un_V)`) },
    { name: 'let-through', unit: 'A²s', width: 13, format: '#,##0', formula: `IF([@kind]="gG",JW.LETTHROUGH_POINTS(${pointsOf('joule', '[@curve]')},[@[Ik3 max]],[@sheet],Un_V),JW.LETTHROUGH_PROSPECTIVE([@[Ik3 max]],[@[clears in]],${board('R/X')}))`, note: 'At the Ik3 max of its board.' },
    { name: 'band least', unit: 'A²s', width: 10, format: '#,##0', formula: forLink('JW.BAND_FUSE_JOULE([@rated],"least")') },
    { name: 'band greatest', unit: 'A²s', width: 10, format: '#,##0', formula: forLink('JW.BAND_FUSE_JOULE([@rated],"greatest")') },
    { name: 'breaking', width: 10, verdict: true, formula: `IF([@kind]="breaker",JW.BREAKING_TEST(${BREAKING}),JW.LIMIT_TEST([@[Ik3 max]],${given('Icu')}))`, note: 'Breakers: Ics for service, Icu for once, and the power factor of the test.' },
    { name: 'breaking %', unit: '%', width: 8, format: '0', formula: `IF([@breaking]="not shown","–",IF([@kind]="breaker",JW.BREAKING_MARGIN(${BREAKING}),JW.LIMIT_MARGIN([@[Ik3 max]],[@Icu])))` },
    ...pair('making', 'MAKING', MAKING, forBreaker, 'Breakers.'),
    ...pair('short-time', 'SHORTTIME', WAITING, (formula) => forBreaker(`IF([@[clears in]]>0.05,${formula},"–")`), 'Breakers that wait.'),
    ...pair('fuse-switch', 'CONDITIONAL', CONDITIONAL, forLink, 'Conditional rating, with the link that it was tested with.'),
    { name: 'voltage', width: 10, verdict: true, formula: forLink(`JW.LIMIT_TEST(Un_V,${given('sheet')})`) },
    { name: 'overload', width: 10, verdict: true, formula: range('overload'), note: 'Selectivity by whole curves, minor slower than 1 s.' },
    { name: 'ranges 0.1–1 s', width: 10, verdict: true, formula: range('short-time') },
    ...pair('by ratio', 'SELECT_RATIO', `${major('rated')},[@rated],${majorData('type')},${given('type')}`, underLink, 'Links of one range.'),
    ...pair('by joule', 'SELECT_JOULE', `[@[let-through]],${majorData('pre-arcing')},[@[Ik3 max]],[@[Ik3 max]]`, underLink, 'Total of this link against the pre-arcing integral of the one upstream, to be read at this board’s level.'),
    ...pair('by peak', 'SELECT_PEAK', `[@[cut-off]],${majorData('Ii')}`, linkUnderBreaker, 'Cut-off against the instantaneous release upstream.'),
    { name: 'limit', unit: 'kA', width: 8, format: '0.0', formula: underBreaker(`JW.SELECT_LIMIT(${major('Ii')},${majorData('Icw')},${given('pair tested')})`) },
    { name: 'extent', width: 10, formula: 'IF(ISNUMBER([@limit]),JW.SELECT_EXTENT([@[Ik3 max]],[@limit]),"–")' },
    { name: 'back-up', width: 10, verdict: true, formula: forBreaker(`IF([@upstream]="","–",JW.BACKUP_TEST([@[Ik3 max]],${given('Icu')},"",${given('pair tested')}))`), note: 'Beyond Icu only a tested pair counts.' },
    { name: 'arc energy', unit: 'J/cm²', width: 8, format: '0.0', formula: board('E worse') },
    { name: 'pole heat', unit: 'W', width: 8, format: '0.0', formula: wherePole('JW.POLE_HEAT([@rated],[@pole])') },
    { name: 'millivolt', width: 10, verdict: true, formula: `IF([@[drop mV]]="","–",JW.MILLIVOLT_TEST(${MILLIVOLT}))`, note: 'An indicator only: never fit to return.' },
    {
      name: 'caution', width: 34, words: true,
      formula: orNone(`IF([@kind]="breaker",JW.CAUTION("BREAKING_TEST",${BREAKING}),JW.CAUTION("CONDITIONAL_TEST",${CONDITIONAL}))`),
    },
    { name: 'clause', width: 26, words: true, formula: 'IF([@kind]="breaker",JW.CLAUSE("BREAKING_TEST"),JW.CLAUSE("CONDITIONAL_TEST"))' },
  ]),
];

const EXAMPLES = [
  ['Q1', 'MSB', 'breaker', 1600, '', '', '', '', 1280, 10, 6400, 0.3, 'off', 0.05, '', '', 80, 80, '', 65, 1, '', '', 'once', '', '', 0.02, '', ''],
  ['F1', 'MSB', 'gG', 400, 'gG range T', 1, 1050000, 500, '', '', '', '', '', '', '', '', 120, '', '', '', '', 80, '400 A gG range T', '', 'Q1', '', '', '', ''],
] as const;

/** Devices, a row each. */
export function addDevices(workbook: Workbook, worked: WorkedColumns): Worksheet {
  const sheet = workbook.addWorksheet('Devices', { properties: { tabColor: { argb: 'FFB5792F' } } });
  titleBlock(sheet, 'DEVICES', DOCUMENT, 26, BLOCK);
  const last = addTable(sheet, { name: 'Devices', at: { row: FIRST_FREE_ROW }, columns: COLUMNS, rows: starterRows(COLUMNS, EXAMPLES), inputLook: exampleLook(EXAMPLES.length) }, worked);
  workbook.definedNames.add(`'Devices'!$A$${FIRST_FREE_ROW + 2}:$A$${last}`, 'list_device');
  sheet.views = [{ state: 'frozen', xSplit: 1, ySplit: FIRST_FREE_ROW + 1 }];
  printSetUp(sheet, DOCUMENT, { rows: last, columns: COLUMNS.length, pagesWide: 3 }, [FIRST_FREE_ROW, FIRST_FREE_ROW + 1]);
  return sheet;
}
