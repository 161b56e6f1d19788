import type { Workbook, Worksheet } from 'exceljs';
import { WAY_COLUMNS } from '../estimator/compare';
import { COST_COLUMNS, OPTION_COLUMNS } from '../estimator/options';
import { FIRST_FREE_ROW, printSetUp, titleBlock } from '../frame';
import { type Column, type WorkedColumns, addTable } from '../table';
import { exampleLook, starterRows, whereFilled } from './blank-rows';
import { BLOCK, DOCUMENT } from './document';

interface Part {
  sheet: string;
  title: string;
  table: string;
  key: string;
  columns: readonly Column[];
  examples: readonly (readonly (string | number)[])[];
  blank: number;
}

const PARTS: readonly Part[] = [
  {
    sheet: 'Options', title: 'OPTIONS: is each fit for its place?', table: 'Options', key: 'key', columns: OPTION_COLUMNS, blank: 6,
    examples: [
      ['W1-A', 'W1', 'Fan house', 'fuse-switch', 'MSB', 160, 0.86, 400, 120, '', 'service', 80, '400 A gG range T', '400 A gG range T'],
      ['W1-B', 'W1', 'Fan house', 'breaker', 'MSB', 160, 0.86, 400, 70, 70, 'service', '', '', ''],
    ],
  },
  {
    sheet: 'Cost', title: 'COST: first cost, one fault, losses', table: 'Cost', key: 'key', columns: COST_COLUMNS, blank: 6,
    examples: [['W1-A', 1180, 30, 3, 120, 300, 150, 1, 1, 0.5, 32, 3], ['W1-B', 2400, 35, 2.5, 150, 0, 1560, 0.2, 3, 1, 22, 3]],
  },
  { sheet: 'Compare', title: 'COMPARE: option A against option B', table: 'Ways', key: 'way', columns: WAY_COLUMNS, blank: 3, examples: [['W1', 'W1-A', 'W1-B', 0.05]] },
];

/** Options of a way: fitness, cost, comparison; a sheet each. */
export function addOptions(workbook: Workbook, worked: WorkedColumns): Worksheet[] {
  return PARTS.map(({ sheet: name, title, table, key, columns: plain, examples, blank }) => {
    const sheet = workbook.addWorksheet(name, { properties: { tabColor: { argb: 'FF8A5C8A' } } });
    const columns = whereFilled(key, plain);
    titleBlock(sheet, title, DOCUMENT, columns.length, BLOCK);
    const last = addTable(sheet, { name: table, at: { row: FIRST_FREE_ROW }, columns, rows: starterRows(columns, examples, blank), inputLook: exampleLook(examples.length) }, worked);
    if (name === 'Options') workbook.definedNames.add(`'Options'!$A$${FIRST_FREE_ROW + 2}:$A$${last}`, 'list_key');
    sheet.views = [{ state: 'frozen', xSplit: 1, ySplit: FIRST_FREE_ROW + 1 }];
    printSetUp(sheet, DOCUMENT, { rows: last, columns: columns.length }, [FIRST_FREE_ROW, FIRST_FREE_ROW + 1]);
    return sheet;
  });
}
