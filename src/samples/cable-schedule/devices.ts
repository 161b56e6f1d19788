import type { Style, Workbook, Worksheet } from 'exceljs';
import { orNone } from '../formula-text';
import { FIRST_FREE_ROW, type Document, letters, printSetUp, titleBlock } from '../frame';
import { type Column, type WorkedColumns, addTable } from '../table';
import { DEVICES, type Device } from './data';
import { ofBoard, ofDevice, pointsOf, tripTime } from './formulas';

const forLink = (formula: string): string => `IF([@kind]="gG",${formula},"–")`;
const forBreaker = (formula: string): string => `IF([@kind]="breaker",${formula},"–")`;
const own = (column: string): string => `[@${/\s/.test(column) ? `[${column}]` : column}]`;

/** What a device is, how it is set, what it lets through. */
const DEVICE: readonly Column[] = [
  { name: 'device', width: 8 },
  { name: 'board', width: 9, list: 'list_board' },
  { name: 'kind', width: 8, list: 'list_kind' },
  { name: 'rated', unit: 'A', width: 7, format: '0', between: [1, 6300] },
  { name: 'range', width: 11, note: 'Only links of one range are compared by the ratio of their ratings.' },
  { name: 'pre-arcing', unit: 'A²s', width: 11, format: '#,##0', note: 'Pre-arcing joule integral from the sheet of the link.' },
  { name: 'read at', unit: 'kA', width: 10, format: '0.0', note: 'Prospective fault level at which the sheet of the link was read.' },
  { name: 'sheet', unit: 'V', width: 9, format: '0', note: 'Voltage of the sheet.' },
  { name: 'switch', unit: 'kA', width: 10, format: '0', note: 'Conditional rating of the fuse-switch.' },
  { name: 'tested with', width: 17, note: 'Link with which the fuse-switch has its conditional rating.' },
  { name: 'Ir', unit: 'A', width: 7, format: '0', between: [1, 10000] },
  { name: 'tr', unit: 's', width: 6, format: '0', between: [0.1, 1000], note: 'At 6 times Ir.' },
  { name: 'Isd', unit: 'A', width: 7, format: '0', note: 'A stage that is switched off says off.' },
  { name: 'tsd', unit: 's', width: 7, format: '0.00' },
  { name: 'Ii', unit: 'A', width: 7, format: '0', note: 'A stage that is switched off says off.' },
  { name: 'ii s', unit: 's', width: 7, format: '0.00', note: 'Longest breaking time of the instantaneous stage.' },
  { name: 'Icu', unit: 'kA', width: 7, format: '0', note: 'Of a link: its rated breaking capacity.' },
  { name: 'Ics', unit: 'kA', width: 7, format: '0.0' },
  { name: 'Icw', unit: 'kA', width: 7, format: '0' },
  { name: 'for', unit: 's', width: 7, format: '0.0' },
  { name: 'need', width: 9, list: 'list_need' },
  { name: 'Ik3 max', unit: 'kA', width: 8, format: '0.00', formula: ofBoard('board', 'Ik3 max') },
  { name: 'clears in', unit: 's', width: 8, format: '0.000', formula: forBreaker(tripTime('1000*[@[Ik3 max]]', own, 'slow')), note: 'Breakers, which do not limit: longest time at Ik3 max by their settings.' },
  {
    name: 'let-through', unit: 'A²s', width: 13, format: '#,##0',
    formula: `IF([@kind]="breaker",JW.LETTHROUGH_PROSPECTIVE([@[Ik3 max]],[@[clears in]],${ofBoard('board', 'R/X')}),JW.LETTHROUGH_POINTS(${pointsOf('joule', '[@curve]')},[@[read at]],[@sheet],Un_V))`,
    note: 'Link: total of its sheet at the level read. Breaker: the prospective current left to flow until it clears, with its d.c. part.',
  },
  { name: 'level', unit: 'kA', width: 8, format: '0.00', formula: 'IF([@kind]="breaker",[@[Ik3 max]],[@[read at]])', note: 'Fault level that the let-through belongs to.' },
  { name: 'cut-off', unit: 'kA peak', width: 8, format: '0.0', formula: forLink(`JW.CUTOFF_POINTS(${pointsOf('cutoff', '[@curve]')},[@[read at]],[@sheet],Un_V)`) },
  {
    name: 'in band?', width: 9, note: 'Pre-arcing integral against the limits of the standard at 0.01 s.',
    formula: forLink('IF(AND([@[pre-arcing]]>=JW.BAND_FUSE_JOULE([@rated],"least"),[@[pre-arcing]]<=JW.BAND_FUSE_JOULE([@rated],"greatest")),"within","outside")'),
  },
];

const CARRIED: readonly Column[] = [
  { name: 'curve', unit: 'no.', width: 7, carried: true, formula: forLink('MATCH([@rated],list_link,0)'), note: 'Number of the link on the sheet Points.' },
  { name: 'digest', width: 10, carried: true, formula: `JW.CHECK_DIGEST(${DEVICE.filter(({ formula }) => formula === undefined).map(({ name }) => `IF(${own(name)}="","",${own(name)})`).join(',')})`, note: 'Of the inputs of the row.' },
];

const data = (column: string): string => ofDevice('device', column);
/** A datum that may be blank is handed on as blank, never as 0. */
const datum = (column: string): string => `IF(${data(column)}="","",${data(column)})`;
/** A margin beside its verdict: none where the test does not apply or nothing is shown. */
const margin = (verdict: string, formula: string): string => `IF(OR([@${verdict}]="–",[@${verdict}]="not shown"),"–",${formula})`;

const BREAKING = `[@[Ik3 max]],${datum('Icu')},${datum('Ics')},${data('need')},[@pf]`;
const SHORT_TIME = `[@[Ik3 max]],${data('clears in')},${datum('Icw')},${datum('for')}`;
const CONDITIONAL = `[@[Ik3 max]],${datum('switch')},${datum('tested with')},${data('rated')}&" A "&${data('range')}`;
/** Shorter clearing is no short-time duty: the breaker trips at once. */
const WAITS = 0.05;
const ifWaits = (formula: string): string => `IF([@kind]="breaker",IF(${data('clears in')}>${WAITS},${formula},"–"),"–")`;

/** Is each device fit for its board? */
const DUTY: readonly Column[] = [
  { name: 'device', width: 8, list: 'list_device' },
  { name: 'board', width: 9, formula: data('board') },
  { name: 'kind', width: 8, formula: data('kind') },
  { name: 'Ik3 max', unit: 'kA', width: 7, format: '0.00', formula: data('Ik3 max') },
  { name: 'ip', unit: 'kA peak', width: 11, format: '0.0', formula: ofBoard('board', 'ip') },
  { name: 'pf', unit: '–', width: 11, format: '0.00', formula: ofBoard('board', 'pf'), note: 'Power factor of the fault.' },
  { name: 'breaking', width: 10, verdict: true, formula: `IF([@kind]="breaker",JW.BREAKING_TEST(${BREAKING}),JW.LIMIT_TEST([@[Ik3 max]],${datum('Icu')}))`, note: 'Breakers: against the power factor of their test too.' },
  { name: 'breaking %', unit: '%', width: 9, format: '0', formula: margin('breaking', `IF([@kind]="breaker",JW.BREAKING_MARGIN(${BREAKING}),JW.LIMIT_MARGIN([@[Ik3 max]],${data('Icu')}))`) },
  { name: 'making', width: 10, verdict: true, formula: forBreaker(`JW.MAKING_TEST([@ip],${datum('Icu')})`), note: 'Making capacity: the peak that belongs to Icu.' },
  { name: 'making %', unit: '%', width: 9, format: '0', formula: margin('making', `JW.MAKING_MARGIN([@ip],${data('Icu')})`) },
  { name: 'waits', width: 10, verdict: true, formula: ifWaits(`JW.SHORTTIME_TEST(${SHORT_TIME})`), note: 'Short-time rating, of breakers that wait.' },
  { name: 'fuse-switch', width: 10, verdict: true, formula: forLink(`JW.CONDITIONAL_TEST(${CONDITIONAL})`), note: 'Conditional rating, with the link that it was tested with.' },
  { name: 'voltage', width: 10, verdict: true, formula: forLink(`JW.LIMIT_TEST(Un_V,${datum('sheet')})`) },
  { name: 'caution', width: 40, words: true, formula: orNone(`IF([@kind]="breaker",IF([@waits]="not shown",JW.CAUTION("SHORTTIME_TEST",${SHORT_TIME}),JW.CAUTION("BREAKING_TEST",${BREAKING})),JW.CAUTION("CONDITIONAL_TEST",${CONDITIONAL}))`) },
];

/** Protective devices, a row each: what they are, what they let through, whether they are fit for their board. */
export function addDevices(workbook: Workbook, worked: WorkedColumns, document: Document, rows: readonly Device[] = DEVICES, inputLook?: (row: number) => Partial<Style>): Worksheet {
  const sheet = workbook.addWorksheet('Devices', { properties: { tabColor: { argb: 'FFB5792F' } } });
  titleBlock(sheet, 'DEVICES: settings and let-through', document, DEVICE.length);
  const last = addTable(sheet, { name: 'Devices', at: { row: FIRST_FREE_ROW }, columns: [...DEVICE, ...CARRIED], rows, ...(inputLook ? { inputLook } : {}) }, worked);
  workbook.definedNames.add(`'Devices'!$A$${FIRST_FREE_ROW + 2}:$A$${last}`, 'list_device');
  sheet.views = [{ state: 'frozen', xSplit: 1, ySplit: FIRST_FREE_ROW + 1 }];
  printSetUp(sheet, document, { rows: last, columns: DEVICE.length }, [FIRST_FREE_ROW, FIRST_FREE_ROW + 1]);
  return sheet;
}

/** Letter of the column that holds the digests of the rows. */
export const DIGEST_COLUMN = letters(DEVICE.length + CARRIED.length);

/** Adequacy of the devices, on a sheet of its own. */
export function addDuty(workbook: Workbook, worked: WorkedColumns, document: Document, rows: readonly Device[] = DEVICES, inputLook?: (row: number) => Partial<Style>): Worksheet {
  const sheet = workbook.addWorksheet('Duty', { properties: { tabColor: { argb: 'FFB5792F' } } });
  titleBlock(sheet, 'DUTY: is each device fit for its board?', document, DUTY.length);
  const last = addTable(sheet, { name: 'Duty', at: { row: FIRST_FREE_ROW }, columns: DUTY, rows: rows.map(([device]) => [device]), ...(inputLook ? { inputLook } : {}) }, worked);
  sheet.views = [{ state: 'frozen', xSplit: 1, ySplit: FIRST_FREE_ROW + 1 }];
  printSetUp(sheet, document, { rows: last, columns: DUTY.length }, [FIRST_FREE_ROW, FIRST_FREE_ROW + 1]);
  return sheet;
}
