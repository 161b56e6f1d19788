import type { Workbook, Worksheet } from 'exceljs';
import { orNone } from '../formula-text';
import { FIRST_FREE_ROW, printSetUp, titleBlock } from '../frame';
import { type Column, type WorkedColumns, addTable } from '../table';
import { DOCUMENT, FAULTS, FIRST, OPTIONS } from './data';

const ofBoard = (column: string): string => `XLOOKUP([@board],Boards[board],Boards[${column}])`;
const of = (table: string, column: string): string => `XLOOKUP([@key],${table}[key],${table}[${column}])`;
const ifBreaker = (then: string, otherwise = '"–"'): string => `IF([@option]="breaker",${then},${otherwise})`;
const given = (column: string): string => `IF([@${column}]="","",[@${column}])`;
const margin = (verdict: string, formula: string): string => `IF(OR([@${verdict}]="–",[@${verdict}]="not shown"),"–",${formula})`;

const breaking = (level: string): string => `${level},[@Icu],${given('Ics')},[@need],[@[pf fault]]`;
const CONDITIONAL = `[@[Ik3 max]],${given('conditional')},IF([@[tested with]]="","",[@[tested with]]),IF([@fitted]="","",[@fitted])`;
const icu = (level: string): string => `JW.LIMIT_TEST(${level},[@Icu])`;

export const OPTION_COLUMNS: readonly Column[] = [
  { name: 'key', width: 8, note: 'Way and option: the other sheets find the row by it.' },
  { name: 'way', width: 6 },
  { name: 'load', width: 13 },
  { name: 'option', width: 12, list: 'list_option' },
  { name: 'board', width: 9, list: 'list_board' },
  { name: 'load kW', unit: 'kW', width: 8, format: '0', between: [0.1, 20000] },
  { name: 'pf', unit: '–', width: 7, format: '0.00', between: [0.1, 1] },
  { name: 'rated', unit: 'A', width: 7, format: '0', between: [1, 6300] },
  { name: 'Icu', unit: 'kA', width: 7, format: '0', note: 'Of a link: its rated breaking capacity.' },
  { name: 'Ics', unit: 'kA', width: 7, format: '0' },
  { name: 'need', width: 9, list: 'list_need', note: 'Must the breaker serve again after the fault (service), or only break it (once)?' },
  { name: 'conditional', unit: 'kA', width: 11, format: '0', note: 'Of the fuse-switch with its link.' },
  { name: 'tested with', width: 17 },
  { name: 'fitted', width: 17 },
  { name: 'Ib', unit: 'A', width: 7, format: '0', formula: 'JW.LOAD_CURRENT([@[load kW]],[@pf],Un_V)' },
  { name: 'Ik3 max', unit: 'kA', width: 8, format: '0.00', formula: ofBoard('Ik3 max') },
  { name: 'ip', unit: 'kA peak', width: 8, format: '0.0', formula: ofBoard('ip') },
  { name: 'pf fault', unit: '–', width: 8, format: '0.00', formula: ofBoard('pf') },
  { name: 'Ib ≤ In', width: 9, verdict: true, formula: 'JW.LIMIT_TEST([@Ib],[@rated])' },
  { name: 'breaking', width: 10, verdict: true, formula: ifBreaker(`JW.BREAKING_TEST(${breaking('[@[Ik3 max]]')})`, icu('[@[Ik3 max]]')), note: 'Breaker: by Ics or Icu as needed. Link: its breaking capacity.' },
  { name: 'making', width: 10, verdict: true, formula: ifBreaker('JW.MAKING_TEST([@ip],[@Icu])') },
  { name: 'fuse-switch', width: 10, verdict: true, formula: ifBreaker('"–"', `JW.CONDITIONAL_TEST(${CONDITIONAL})`), note: 'Conditional rating, with the link that it was tested with.' },
  { name: 'uk −10 %', width: 10, verdict: true, formula: ifBreaker(`JW.BREAKING_TEST(${breaking(ofBoard('uk −10 %'))})`, icu(ofBoard('uk −10 %'))), note: 'Breaking again, with the transformers’ impedance at its lower tolerance: a sensitivity, not for the record.' },
  { name: 'breaking %', unit: '%', width: 9, format: '0', formula: margin('breaking', ifBreaker(`JW.BREAKING_MARGIN(${breaking('[@[Ik3 max]]')})`, 'JW.LIMIT_MARGIN([@[Ik3 max]],[@Icu])')) },
  { name: 'making %', unit: '%', width: 9, format: '0', formula: margin('making', 'JW.MAKING_MARGIN([@ip],[@Icu])') },
  { name: 'fuse-switch %', unit: '%', width: 10, format: '0', formula: margin('fuse-switch', `JW.CONDITIONAL_MARGIN(${CONDITIONAL})`) },
  { name: 'caution', width: 28, words: true, formula: orNone(ifBreaker(`JW.CAUTION("BREAKING_TEST",${breaking('[@[Ik3 max]]')})`, `JW.CAUTION("CONDITIONAL_TEST",${CONDITIONAL})`)) },
];

/** The options, a row each, tested like for like: both of a way at the same fault level. */
export function addOptions(workbook: Workbook, worked: WorkedColumns): Worksheet {
  const sheet = workbook.addWorksheet('Options', { properties: { tabColor: { argb: 'FF5C8A4A' } } });
  titleBlock(sheet, 'OPTIONS: is each fit for its place?', DOCUMENT, OPTION_COLUMNS.length);
  const last = addTable(sheet, { name: 'Options', at: { row: FIRST_FREE_ROW }, columns: OPTION_COLUMNS, rows: OPTIONS }, worked);
  sheet.views = [{ state: 'frozen', xSplit: 1, ySplit: FIRST_FREE_ROW + 1 }];
  printSetUp(sheet, DOCUMENT, { rows: last, columns: OPTION_COLUMNS.length }, [FIRST_FREE_ROW, FIRST_FREE_ROW + 1]);
  return sheet;
}

export const COST_COLUMNS: readonly Column[] = [
  { name: 'key', width: 8, list: 'list_key' },
  { name: 'list price', unit: 'money', width: 9, format: '#,##0' },
  { name: 'discount', unit: '%', width: 9, format: '0', between: [0, 100] },
  { name: 'assembly', unit: 'h', width: 9, format: '0.00' },
  { name: 'auxiliaries', unit: 'money', width: 10, format: '#,##0', note: 'Enclosure, handle, auxiliary contacts.' },
  { name: 'spares', unit: 'money', width: 8, format: '#,##0', note: 'Spares kept from the start: two sets of links; a breaker where waiting for one would hurt.' },
  { name: 'parts', unit: 'money', width: 8, format: '#,##0', note: 'For one fault: all three links, or a breaker.' },
  { name: 'chance', unit: '–', width: 8, format: '0.00', between: [0, 1], note: 'That the parts are needed; client’s figure. Links: always.' },
  { name: 'work', unit: 'h', width: 7, format: '0.0' },
  { name: 'waiting', unit: 'h', width: 8, format: '0.0', note: 'Calling, travel, finding parts.' },
  { name: 'pole', unit: 'W', width: 7, format: '0.0', note: 'Heat of one pole at the load, from the sheet.' },
  { name: 'poles', unit: '–', width: 7, between: [1, 4] },
  { name: 'way', width: 6, formula: of('Options', 'way') },
  { name: 'option', width: 11, formula: of('Options', 'option') },
  { name: 'first cost', unit: 'money', width: 10, format: '#,##0', formula: 'JW.FIRST_COST([@[list price]],[@discount],[@assembly],labour_rate,[@auxiliaries]+[@spares])' },
  {
    name: 'after a fault', width: 30, words: true,
    formula: `JW.AFTER_FAULT(${of('Options', 'Ik3 max')},${of('Options', 'Icu')},IF(${of('Options', 'Ics')}="","",${of('Options', 'Ics')}),IF([@option]="breaker","breaker","fuse"))`,
  },
  { name: 'one fault', unit: 'money', width: 10, format: '#,##0', formula: 'JW.REINSTATE_COST([@parts],[@work],labour_rate,[@work]+[@waiting],downtime_rate,[@chance])', note: 'Parts by their chance, labour, and the time without the way: work and waiting.' },
  { name: 'losses', unit: 'a year', width: 9, format: '#,##0', formula: 'JW.LOSS_COST([@pole]*[@poles],hours_a_year,energy_price)' },
  { name: 'fixed', unit: 'money', width: 10, format: '#,##0', formula: 'JW.PRESENT_COST([@[first cost]],[@losses],rate_pct,years)', note: 'Present cost without any fault: first cost and losses.' },
];

const COST_ROWS = FIRST.map(([key, ...first], i) => [key, ...first, ...FAULTS[i]!.slice(1)]);

/** What each option costs at first, with one fault, and by its losses. */
export function addCost(workbook: Workbook, worked: WorkedColumns): Worksheet {
  const sheet = workbook.addWorksheet('Cost', { properties: { tabColor: { argb: 'FFB5792F' } } });
  titleBlock(sheet, 'COST: first cost, one fault, losses', DOCUMENT, COST_COLUMNS.length);
  const last = addTable(sheet, { name: 'Cost', at: { row: FIRST_FREE_ROW }, columns: COST_COLUMNS, rows: COST_ROWS }, worked);
  sheet.views = [{ state: 'frozen', xSplit: 1, ySplit: FIRST_FREE_ROW + 1 }];
  printSetUp(sheet, DOCUMENT, { rows: last, columns: COST_COLUMNS.length }, [FIRST_FREE_ROW, FIRST_FREE_ROW + 1]);
  return sheet;
}
