import { type Unit, convert, kindOf, unitOf } from '../../core/units';
import { type CurveRow, curveFindings } from '../../core/curve/curve-findings';
import { type CurveKind, curveUnits } from '../../functions/kernel/range-kinds';
import { type Separator, cellsOf, hasNumberComma, isNumber, plainLine, separatorOf } from './split-cells';

/** Points as somebody pasted them, in the units of their kind of curve. */
export interface ReadPoints {
  readonly kind: CurveKind;
  readonly separator: Separator;
  /** Headings as pasted; undefined where there are none. */
  readonly headings: readonly [string, string] | undefined;
  /** Conversions that were made, in words. */
  readonly converted: readonly string[];
  readonly rows: readonly ReadRow[];
  /** What bars the points from being used at all. */
  readonly faults: readonly string[];
  /** Findings by row, those of the check in the sheet, with the reason where a cell could not be read. */
  readonly findings: readonly Finding[];
}
export interface ReadRow {
  /** Number of the line in the paste, from 1, blank lines before the first not counted. */
  readonly number: number;
  readonly point: readonly [number, number] | undefined;
}
export interface Finding {
  readonly words: string;
  /** Row that it is about. */
  readonly row: number | undefined;
}

/** The units of the two columns of a curve; a peak is in kA too. */
const columnUnit = (kind: CurveKind, column: 0 | 1): Unit => unitOf(curveUnits[kind][column].replace(/ peak$/, ''))!;
const ORDINALS = ['first', 'second'] as const;

/** The unit that a heading declares: in brackets, behind a comma or a stroke, behind "in", or the whole heading. */
function declaredUnit(heading: string): Unit | undefined {
  const bare = (text: string): Unit | undefined => unitOf(text.replace(/\b(?:peak|pk|r\.?m\.?s\.?)\b\.?/gi, '').trim());
  const whole = bare(heading);
  if (whole !== undefined) return whole;
  const places = [/[([]\s*([^)\]]+?)\s*[)\]]/, /,\s*(\S.*)$/, /\s\/\s*(\S.*)$/, /\bin\s+(\S.*)$/i, /[\s_](\S+)$/];
  for (const place of places) {
    const found = place.exec(heading)?.[1];
    const unit = found === undefined ? undefined : bare(found);
    if (unit !== undefined) return unit;
  }
  return undefined;
}

interface Column {
  /** Unit that its plain figures are in. */
  readonly unit: Unit;
  readonly takes: Unit;
}

type ReadCell = { readonly value: number } | 'blank' | { readonly problem: string };

function readCell(cell: string, { unit, takes }: Column): ReadCell {
  if (cell === '') return 'blank';
  if (hasNumberComma(cell)) return { problem: `${cell} holds a comma: write a decimal point, and no thousands marks` };
  if (/^[+-]?\d{1,3}(?: \d{3})+(?:\.\d+)?$/.test(cell)) return { problem: `${cell} holds a thousands mark: write ${cell.replace(/ /g, '')}` };
  const [, number = '', written = ''] = /^([+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?)\s*(.*)$/.exec(cell) ?? [];
  if (!isNumber(number)) return { problem: `${cell} is no number` };
  const own = written === '' ? unit : unitOf(written);
  if (own === undefined) return { problem: `${written} is not a unit known here` };
  const value = convert(Number(number), own, takes);
  return value === undefined ? { problem: `${own} is ${kindOf(own)}, takes ${takes}` } : { value };
}

const nothing = (kind: CurveKind): ReadPoints => ({ kind, separator: 'tab', headings: undefined, converted: [], rows: [], faults: [], findings: [] });

/** Reads what was pasted. Nothing is guessed: what cannot be read as a number in a known unit is told, and no point. */
export function readPoints(text: string, kind: CurveKind): ReadPoints {
  const lines = plainLine(text).replace(/\r\n?/g, '\n').split('\n').map((line) => line.replace(/ +$/, ''));
  while (lines.length > 0 && lines[0]!.trim() === '') lines.shift();
  while (lines.length > 0 && lines.at(-1)!.trim() === '') lines.pop();
  if (lines.length === 0) return nothing(kind);
  const separator = separatorOf(lines);
  const cells = lines.map((line) => (line.trim() === '' ? ['', ''] : cellsOf(line, separator)));
  const headings = cells[0]!.length === 2 && cells[0]!.every((cell) => cell !== '' && !/^[+-]?[.\d]/.test(cell)) ? ([cells[0]![0]!, cells[0]![1]!] as const) : undefined;
  const columns = ([0, 1] as const).map((column) => ({ takes: columnUnit(kind, column), declared: headings && declaredUnit(headings[column]) }));
  const faults = columns.flatMap(({ takes, declared }, column) =>
    declared === undefined || kindOf(declared) === kindOf(takes) ? [] : [`The heading of the ${ORDINALS[column]} column is in ${declared}, ${kindOf(declared)}; points of this kind take ${takes} there.`]);
  const reading = columns.map(({ takes, declared }) => ({ takes, unit: declared !== undefined && kindOf(declared) === kindOf(takes) ? declared : takes }));
  const converted = reading.flatMap(({ takes, unit }, column) => (takes === unit ? [] : [
    `${ORDINALS[column]} column: ${unit} converted to ${takes}${unit === 'kA²s' ? ' (kA²s read as 10⁶ A²s; some sheets mean 10³ A²s by it)' : ''}`,
  ]));
  const first = headings ? 1 : 0;
  const read = cells.slice(first).map((row, i) => readRow(row, i + first + 1, reading));
  return {
    kind, separator, headings, converted, faults,
    rows: read.map(({ number, point }) => ({ number, point })),
    findings: findingsOf(read, first + 1, kind),
  };
}

interface RowAsRead extends ReadRow {
  readonly cells: CurveRow;
  readonly problem: string;
}

function readRow(cells: readonly string[], number: number, columns: readonly Column[]): RowAsRead {
  if (cells.length !== 2) {
    const comma = cells.length > 2 && cells.every((cell) => /^[+-]?\d+$/.test(cell)) ? '; decimal commas? Write decimal points' : '';
    return { number, point: undefined, cells: ['other', 'other'], problem: `${cells.length === 1 ? 'one cell' : `${cells.length} cells`}, takes two${comma}` };
  }
  const [x, y] = [readCell(cells[0]!, columns[0]!), readCell(cells[1]!, columns[1]!)];
  const of = (cell: ReadCell): CurveRow[number] => (cell === 'blank' ? 'blank' : 'value' in cell ? cell.value : 'other');
  const problem = [x, y].flatMap((cell) => (cell !== 'blank' && 'problem' in cell ? [cell.problem] : [])).join('; ');
  const [a, b] = [of(x), of(y)];
  return { number, point: typeof a === 'number' && typeof b === 'number' ? [a, b] : undefined, cells: [a, b], problem };
}

/** The findings of the check in the sheet, word for word; where it can only say "not numbers", the reason goes with it. */
function findingsOf(rows: readonly RowAsRead[], firstRow: number, kind: CurveKind): Finding[] {
  return curveFindings(rows.map(({ cells }) => cells), firstRow, kind).map((words) => {
    const [, number] = /^row (\d+):/.exec(words) ?? [];
    const row = number === undefined ? undefined : Number(number);
    const problem = row === undefined ? '' : rows[row - firstRow]!.problem;
    return { row, words: problem === '' ? words : `${words} (${problem})` };
  });
}

/** Whether every row is a point, so that the points can be written to a sheet. */
export const isComplete = ({ rows, faults }: ReadPoints): boolean => faults.length === 0 && rows.length > 0 && rows.every(({ point }) => point !== undefined);
