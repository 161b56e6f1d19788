import type { Workbook, Worksheet } from 'exceljs';
import type { Chart } from '../chart-xml';
import { fileFormula } from '../formula-text';
import { FIRST_FREE_ROW, letters, printSetUp, titleBlock } from '../frame';
import { HEADING, INPUT, UNIT, WORKED, dress } from '../look';
import { DOCUMENT } from './data';

const TIMES = [0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5] as const;
const CURRENTS = [1, 2, 3, 5, 7, 10, 15, 20, 30, 40, 50] as const;
/** Cables drawn as withstand lines, and the breaker and cable of the joule chart. */
const DRAWN = ['C09', 'C11', 'C05'] as const;
const LEVELS_OF = 'C11';
const BREAKERS = ['Q2', 'Q3'] as const;

const HEAD = FIRST_FREE_ROW + 1;
const FIRST = HEAD + 1;
const TIMES_END = FIRST + TIMES.length - 1;
const CURRENTS_END = FIRST + CURRENTS.length - 1;
/** Columns of the blocks, from 1: withstand (time, three cables); levels (current, time); joule (current, two breakers, cable); link. */
const AT = { time: 1, withstand: 2, levelX: 6, levelY: 8, current: 10, joule: 11, cable: 13, linkX: 15, linkY: 16 } as const;
const LAST_COLUMN = 16;
const CHART_TOP = CURRENTS_END + 1;

const of = (table: string, key: string, cell: string, column: string): string => `XLOOKUP(${cell},${table}[${key}],${table}[${column}])`;

/** Chart data, all worked out from the schedule. */
export function addCurves(workbook: Workbook): Worksheet {
  const sheet = workbook.addWorksheet('Curves', { properties: { tabColor: { argb: 'FFA04848' } } });
  titleBlock(sheet, 'CURVES: how long cables stand a fault; joule integrals', DOCUMENT, LAST_COLUMN);
  const head = (column: number, text: string, unit: string, style = HEADING): void => {
    dress(sheet.getCell(HEAD, column), style).value = text;
    dress(sheet.getCell(HEAD - 1, column), UNIT).value = unit;
    sheet.getColumn(column).width = 12.7;
  };
  const work = (row: number, column: number, typed: string, format: string): void => {
    dress(sheet.getCell(row, column), WORKED, format).value = { formula: fileFormula(typed, '') };
  };
  const type = (row: number, column: number, value: number, format: string): void => void (dress(sheet.getCell(row, column), INPUT, format).value = value);

  head(AT.time, 'time', 's');
  DRAWN.forEach((cable, i) => head(AT.withstand + i, cable, 'A', INPUT));
  TIMES.forEach((time, i) => {
    type(FIRST + i, AT.time, time, '0.00');
    DRAWN.forEach((_, j) => {
      const key = `${letters(AT.withstand + j)}$${HEAD}`;
      work(FIRST + i, AT.withstand + j, `1000*JW.CABLE_WITHSTAND_CURRENT(${of('Cables', 'cable', key, 'k')},${of('Cables', 'cable', key, 'size')},$A${FIRST + i})`, '#,##0');
    });
  });

  head(AT.levelX, LEVELS_OF, 'A', INPUT);
  head(AT.levelX + 1, 'Ik1 min', 'A');
  head(AT.levelY, 'level', 's');
  [0.01, 5].forEach((time, i) => {
    work(FIRST + i, AT.levelX, `1000*${of('Cables', 'cable', `$F$${HEAD}`, 'Ik3 max')}`, '#,##0');
    work(FIRST + i, AT.levelX + 1, `1000*${of('Cables', 'cable', `$F$${HEAD}`, 'Ik1 min')}`, '#,##0');
    type(FIRST + i, AT.levelY, time, '0.00');
  });

  head(AT.current, 'current', 'kA');
  BREAKERS.forEach((device, i) => head(AT.joule + i, device, 'A²s', INPUT));
  head(AT.cable, LEVELS_OF, 'A²s', INPUT);
  CURRENTS.forEach((current, i) => {
    type(FIRST + i, AT.current, current, '0');
    BREAKERS.forEach((_, j) => work(FIRST + i, AT.joule + j, `JW.LETTHROUGH_PROSPECTIVE($J${FIRST + i},${of('Devices', 'device', `${letters(AT.joule + j)}$${HEAD}`, 'clearing')},${of('Devices', 'device', `${letters(AT.joule + j)}$${HEAD}`, 'R/X')})`, '0.00E+00'));
    work(FIRST + i, AT.cable, of('Cables', 'cable', `$M$${HEAD}`, 'k²S²'), '0.00E+00');
  });

  head(AT.linkX, 'links', 'kA');
  head(AT.linkY, 'total', 'A²s');
  ['F8', 'F6', 'F5', 'F1'].forEach((device, i) => {
    work(FIRST + i, AT.linkX, of('Devices', 'device', `"${device}"`, 'read at'), '0.0');
    work(FIRST + i, AT.linkY, of('Devices', 'device', `"${device}"`, 'total'), '0.00E+00');
  });
  printSetUp(sheet, DOCUMENT, { rows: CHART_TOP + 30, columns: LAST_COLUMN });
  return sheet;
}

const column = (at: number, from: number, to: number): string => `'Curves'!$${letters(at)}$${from}:$${letters(at)}$${to}`;
const COLOURS = ['34495A', 'B5792F', '5C8A4A'] as const;

/** Time against current with withstand lines and fault levels; joule integral against current with k²S². */
export const curveCharts: readonly Chart[] = [
  {
    title: `How long cables stand a fault; levels of ${LEVELS_OF}`,
    at: { column: 0, row: CHART_TOP, toColumn: 8, toRow: CHART_TOP + 28 },
    x: { title: 'Current, A', min: 100, max: 100000 },
    y: { title: 'Time, s', min: 0.01, max: 10 },
    series: [
      ...DRAWN.map((cable, i) => ({ name: `${cable} stands`, x: column(AT.withstand + i, FIRST, TIMES_END), y: column(AT.time, FIRST, TIMES_END), colour: COLOURS[i]! })),
      { name: 'Ik3 max', x: column(AT.levelX, FIRST, FIRST + 1), y: column(AT.levelY, FIRST, FIRST + 1), colour: 'A04848', dashed: true },
      { name: 'Ik1 min', x: column(AT.levelX + 1, FIRST, FIRST + 1), y: column(AT.levelY, FIRST, FIRST + 1), colour: '8A5C8A', dashed: true },
    ],
  },
  {
    title: 'Joule integral let through, against k²S² of one cable',
    at: { column: 9, row: CHART_TOP, toColumn: LAST_COLUMN, toRow: CHART_TOP + 28 },
    x: { title: 'Prospective current, kA', min: 1, max: 100 },
    y: { title: 'Joule integral, A²s', min: 10000, max: 1000000000 },
    series: [
      ...BREAKERS.map((device, i) => ({ name: `${device}, does not limit`, x: column(AT.current, FIRST, CURRENTS_END), y: column(AT.joule + i, FIRST, CURRENTS_END), colour: COLOURS[i]! })),
      { name: `k²S² of ${LEVELS_OF}`, x: column(AT.current, FIRST, CURRENTS_END), y: column(AT.cable, FIRST, CURRENTS_END), colour: 'A04848', dashed: true },
      { name: 'links, total', x: column(AT.linkX, FIRST, FIRST + 3), y: column(AT.linkY, FIRST, FIRST + 3), colour: '5C8A4A', points: true },
    ],
  },
];
