import type { Workbook, Worksheet } from 'exceljs';
import type { Chart } from '../chart-xml';
import { fileFormula } from '../formula-text';
import { FIRST_FREE_ROW, type Document, letters, printSetUp, titleBlock } from '../frame';
import { HEADING, INPUT, REMARK, UNIT, WORKED, dress } from '../look';
import { type PointKind, LINK_TOLERANCE, pointsName } from './formulas';

/** The story of the charts: one cable, its breaker, and the link upstream; and what links and breakers let through. */
const CABLE = 'C11';
const BREAKER = 'Q3';
const LINK = 250;
const UPSTREAM = 'F4';
const LIMITING = [63, 160, 400] as const;

const COLOURS = { link: 'B5792F', breaker: '34495A', cable: '5C8A4A', greatest: 'A04848', least: '8A5C8A', other: '4E7A8C' } as const;

const UNITS = FIRST_FREE_ROW + 1;
const HEAD = UNITS + 1;
const FIRST = HEAD + 1;

const named = (table: string, key: string, value: string, column: string): string => `XLOOKUP("${value}",${table}[${key}],${table}[${column}])`;
const ofBreaker = (column: string): string => named('Devices', 'device', BREAKER, column);
const ofCable = (column: string): string => named('Cables', 'cable', CABLE, column);

/** A pair of columns or more: heading, unit, format and the formula or figure of each row. */
interface Block {
  at: number;
  columns: readonly { head: string; unit: string; format: string }[];
  rows: readonly (readonly (string | number)[])[];
}

/** The cell of the same row in another column of the block. */
const here = (column: number, row: number): string => `$${letters(column)}${row}`;

const trip = (current: string, edge: 'slow' | 'fast'): string => `JW.TRIP_TIME(${current},${['Ir', 'tr', 'Isd', 'tsd', 'Ii', 'ii s'].map(ofBreaker).join(',')},"${edge}")`;

/** Corners and way points of one edge of the breaker: currents as formulas of its settings, just before and at the step of the short-time stage. */
function edge(at: number, which: 'slow' | 'fast'): Block {
  const [start, share] = which === 'slow' ? [1.3, 1.2] : [1.06, 0.8];
  const [ir, isd] = [ofBreaker('Ir'), ofBreaker('Isd')];
  const currents = [`${start}*${ir}`, `2*${ir}`, `3*${ir}`, `${share}*${isd}*0.99999`, `${share}*${isd}`, `2*${isd}`, `1000*${ofBreaker('Ik3 max')}`];
  return {
    at,
    columns: [{ head: `${BREAKER} ${which}`, unit: 'A', format: '#,##0' }, { head: 'time', unit: 's', format: '0.000' }],
    rows: currents.map((current, i) => [current, trip(here(at, FIRST + i), which)]),
  };
}

const points = (kind: PointKind, rated: number): string => pointsName(kind, rated);
const linkTime = (current: string, which: 'slow' | 'fast'): string => `JW.CURVE_TIME(${points('time', LINK)},${current},${LINK_TOLERANCE},"${which}")`;

const LINK_CURRENTS = [680, 800, 1000, 1250, 1600, 2000, 2500, 3200, 4000, 5000, 6300, 8000, 11000];
const WITHSTAND_TIMES = [0.01, 0.05, 0.1, 0.2, 0.5, 1, 2, 5];
const KILOAMPS = [5, 7, 10, 14, 20, 30, 40, 53];
const SMALL_KILOAMPS = [1, 2, 3, 5, 7, 10, 15, 20, 30, 40, 53];

const LINKS_AT = 1;
const SLOW_AT = 5;
const FAST_AT = 7;
const STANDS_AT = 10;
const LEVELS_AT = 13;
const CUT_AT = 17;
const JOULE_AT = 22;
const LAST_COLUMN = 26;

const BLOCKS: readonly Block[] = [
  {
    at: LINKS_AT,
    columns: [{ head: UPSTREAM, unit: 'A', format: '#,##0' }, { head: 'slow', unit: 's', format: '0.0000' }, { head: 'fast', unit: 's', format: '0.0000' }],
    rows: LINK_CURRENTS.map((current, i) => [current, linkTime(here(LINKS_AT, FIRST + i), 'slow'), linkTime(here(LINKS_AT, FIRST + i), 'fast')]),
  },
  edge(SLOW_AT, 'slow'),
  edge(FAST_AT, 'fast'),
  {
    at: STANDS_AT,
    columns: [{ head: `${CABLE} stands`, unit: 'A', format: '#,##0' }, { head: 'for', unit: 's', format: '0.00' }],
    rows: WITHSTAND_TIMES.map((time, i) => [`1000*JW.CABLE_WITHSTAND_CURRENT(${ofCable('k')},${ofCable('size')},${here(STANDS_AT + 1, FIRST + i)})`, time]),
  },
  {
    at: LEVELS_AT,
    columns: [{ head: 'Ik3 max', unit: 'A', format: '#,##0' }, { head: 'Ik1 min', unit: 'A', format: '#,##0' }, { head: 'drawn', unit: 's', format: '0.000' }],
    rows: [0.005, 1000].map((time) => [`1000*${ofCable('Ik3 max')}`, `1000*${ofCable('Ik1 min')}`, time]),
  },
  {
    at: CUT_AT,
    columns: [
      { head: 'current', unit: 'kA', format: '0' }, { head: 'unlimited', unit: 'kA peak', format: '0.0' },
      ...LIMITING.slice(1).map((rated) => ({ head: `${rated} A`, unit: 'kA peak', format: '0.0' })),
    ],
    rows: KILOAMPS.map((current, i) => [
      current, `JW.FAULT_PEAK(${here(CUT_AT, FIRST + i)},${named('Boards', 'board', 'MSB', 'R/X')})`,
      ...LIMITING.slice(1).map((rated) => (rated === 400 && current < 14 ? '' : `JW.CUTOFF_POINTS(${points('cutoff', rated)},${here(CUT_AT, FIRST + i)},500,Un_V)`)),
    ]),
  },
  {
    at: JOULE_AT,
    columns: [
      { head: 'current', unit: 'kA', format: '0' }, { head: BREAKER, unit: 'A²s', format: '0.00E+00' }, { head: `k²S² ${CABLE}`, unit: 'A²s', format: '0.00E+00' },
      { head: '160 A', unit: 'A²s', format: '0.00E+00' }, { head: '63 A', unit: 'A²s', format: '0.00E+00' },
    ],
    rows: SMALL_KILOAMPS.map((current, i) => [
      current, `JW.LETTHROUGH_PROSPECTIVE(${here(JOULE_AT, FIRST + i)},${ofBreaker('clears in')},${named('Boards', 'board', 'GLAZE', 'R/X')})`, ofCable('k²S²'),
      current < 5 ? '' : `JW.LETTHROUGH_POINTS(${points('joule', 160)},${here(JOULE_AT, FIRST + i)},500,Un_V)`,
      current < 2 ? '' : `JW.LETTHROUGH_POINTS(${points('joule', 63)},${here(JOULE_AT, FIRST + i)},500,Un_V)`,
    ]),
  },
];

const LAST_ROW = FIRST + Math.max(...BLOCKS.map(({ rows }) => rows.length)) - 1;
const CHART_TOP = LAST_ROW + 1;

/** Figures of the charts, plain cells all worked out from the schedule. */
export function addCurves(workbook: Workbook, document: Document): Worksheet {
  const sheet = workbook.addWorksheet('Curves', { properties: { tabColor: { argb: 'FFA04848' } } });
  titleBlock(sheet, `CURVES: cable ${CABLE} behind breaker ${BREAKER} and link ${UPSTREAM}; cut-off; joule integrals`, document, LAST_COLUMN);
  const caption = (column: number, text: string): void => {
    dress(sheet.getCell(FIRST_FREE_ROW, column), REMARK).value = text;
    sheet.getCell(FIRST_FREE_ROW, column).alignment = { wrapText: false };
  };
  caption(LINKS_AT, `Time against current: link ${UPSTREAM} and breaker ${BREAKER} at both edges, what cable ${CABLE} stands, fault levels`);
  caption(CUT_AT, 'Peak let through');
  caption(JOULE_AT, 'Joule integral let through');
  for (const { at, columns, rows } of BLOCKS) {
    columns.forEach(({ head, unit }, i) => {
      dress(sheet.getCell(UNITS, at + i), UNIT).value = unit;
      dress(sheet.getCell(HEAD, at + i), HEADING).value = head;
    });
    rows.forEach((row, n) => row.forEach((entry, i) => {
      if (entry === '') return;
      const cell = dress(sheet.getCell(FIRST + n, at + i), typeof entry === 'number' ? INPUT : WORKED, columns[i]!.format);
      cell.value = typeof entry === 'number' ? entry : { formula: fileFormula(entry, '') };
    }));
  }
  for (let column = 1; column <= LAST_COLUMN; column += 1) sheet.getColumn(column).width = [4, 9, 12, 16, 21].includes(column) ? 2.7 : 11.2;
  printSetUp(sheet, document, { rows: CHART_TOP + 32, columns: LAST_COLUMN });
  return sheet;
}

const cells = (column: number, rows: number): string => `'Curves'!$${letters(column)}$${FIRST}:$${letters(column)}$${FIRST + rows - 1}`;
const rowsAt = (at: number): number => BLOCKS.find((block) => block.at === at)!.rows.length;
const series = (name: string, at: number, x: number, y: number, colour: string, dashed?: true) =>
  ({ name, x: cells(at + x, rowsAt(at)), y: cells(at + y, rowsAt(at)), colour, ...(dashed ? { dashed } : {}) });

export const curveCharts: readonly Chart[] = [
  {
    title: `Time against current: ${UPSTREAM}, ${BREAKER}, cable ${CABLE}`,
    at: { column: 0, row: CHART_TOP, toColumn: 15, toRow: CHART_TOP + 31 },
    x: { title: 'Current, A', min: 100, max: 100000 },
    y: { title: 'Time, s', min: 0.001, max: 1000 },
    series: [
      series(`${UPSTREAM} slow`, LINKS_AT, 0, 1, COLOURS.link),
      series(`${UPSTREAM} fast`, LINKS_AT, 0, 2, COLOURS.link, true),
      series(`${BREAKER} slow`, SLOW_AT, 0, 1, COLOURS.breaker),
      series(`${BREAKER} fast`, FAST_AT, 0, 1, COLOURS.breaker, true),
      series(`${CABLE} stands`, STANDS_AT, 0, 1, COLOURS.cable),
      series('Ik3 max', LEVELS_AT, 0, 2, COLOURS.greatest, true),
      series('Ik1 min', LEVELS_AT, 1, 2, COLOURS.least, true),
    ],
  },
  {
    title: 'Cut-off',
    at: { column: 16, row: CHART_TOP, toColumn: 20, toRow: CHART_TOP + 31 },
    x: { title: 'Prospective current, kA', min: 1, max: 100 },
    y: { title: 'Peak, kA', min: 1, max: 1000 },
    series: [
      series('unlimited', CUT_AT, 0, 1, COLOURS.greatest, true),
      ...LIMITING.slice(1).map((rated, i) => series(`${rated} A gG`, CUT_AT, 0, 2 + i, i === 0 ? COLOURS.other : COLOURS.link)),
    ],
  },
  {
    title: `Joule integral against k²S² of ${CABLE}`,
    at: { column: 21, row: CHART_TOP, toColumn: LAST_COLUMN, toRow: CHART_TOP + 31 },
    x: { title: 'Prospective current, kA', min: 1, max: 100 },
    y: { title: 'Joule integral, A²s', min: 10000, max: 1000000000 },
    series: [
      series(`breaker ${BREAKER}`, JOULE_AT, 0, 1, COLOURS.breaker),
      series(`k²S² of ${CABLE}`, JOULE_AT, 0, 2, COLOURS.greatest, true),
      series('160 A gG', JOULE_AT, 0, 3, COLOURS.other),
      series('63 A gG', JOULE_AT, 0, 4, COLOURS.link),
    ],
  },
];
