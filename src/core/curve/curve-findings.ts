import { atMost } from '../judgement';

/** A row of a curve as it stands in the user's cells: two cells, each a number, a blank, or something else. */
export type CurveRow = readonly (number | 'blank' | 'other')[];

type Point = readonly [x: number, y: number];

export type CurveKind = 'time' | 'cut-off' | 'joule';

/** A longer way from point to point hides the bend of the curve: half a decade in x; in y a decade, for times two. */
const WIDEST_GAP = Math.sqrt(10);
const JUMP: Readonly<Record<CurveKind, { times: number; words: string }>> = {
  time: { times: 100, words: 'two decades' },
  'cut-off': { times: 10, words: 'a decade' },
  joule: { times: 10, words: 'a decade' },
};
const FEWEST_POINTS = 4;

/**
 * What is wrong with the points of a curve, in the order of the rows, each as a person would say it.
 * Source: own rules.
 * @param rows     rows of two cells, without heading and without blank rows at the end
 * @param firstRow number of the first of them in the user's range
 */
export function curveFindings(rows: readonly CurveRow[], firstRow: number, kind: CurveKind): string[] {
  const findings: string[] = [];
  const points: Point[] = [];
  rows.forEach((row, index) => {
    const say = (problem: string): number => findings.push(`row ${firstRow + index}: ${problem}`);
    const point = pointOf(row);
    if (typeof point === 'string') {
      say(point);
      return;
    }
    const [before, last] = [points[points.length - 2], points[points.length - 1]];
    if (last) between(last, point, kind, before?.[0] === point[0]).forEach(say);
    points.push(point);
  });
  if (points.length < FEWEST_POINTS) findings.push(`fewer than ${FEWEST_POINTS} points`);
  return findings;
}

/** The point, or what bars the row from being one. */
function pointOf(row: CurveRow): Point | string {
  if (row.includes('blank')) return 'blank cell';
  const [x, y] = row;
  if (typeof x !== 'number' || typeof y !== 'number') return 'not numbers';
  return x > 0 && y > 0 ? [x, y] : 'not above zero';
}

/** A time curve may have a vertical step, where one current comes twice; a third time is no step. */
function between([x0, y0]: Point, [x1, y1]: Point, kind: CurveKind, third: boolean): string[] {
  const step = kind === 'time' && x1 === x0 && y1 < y0 && !third;
  const { times, words } = JUMP[kind];
  return [
    ...(x1 > x0 || step ? [] : ['first column does not rise']),
    ...(kind === 'time' && y1 > y0 ? ['time rises'] : []),
    ...(kind === 'cut-off' && y1 < y0 ? ['cut-off falls'] : []),
    ...(!atMost(x1, x0 * WIDEST_GAP) ? ['gap of more than half a decade'] : []),
    ...(!step && !atMost(Math.max(y0 / y1, y1 / y0), times) ? [`jump of more than ${words}`] : []),
  ];
}

/** The findings in one cell: the first, and how many more. */
export const findingsInWords = (findings: readonly string[]): string => {
  const [first, ...more] = findings;
  if (first === undefined) return 'no findings';
  return more.length === 0 ? first : `${first}; ${more.length} more`;
};
