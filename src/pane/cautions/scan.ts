import type { Cell } from '../../functions/kernel/cell';
import { CellError } from '../../functions/kernel/cell';
import { explain } from '../../sheet/explain/explain';
import type { Explanation } from '../../sheet/explain/explanation';
import { addressOf } from '../../sheet/xlsx/address';
import type { FormulaCell, PaneHost } from '../host';
import { snapshotOf } from './snapshot';

/** What is worth a look in the cells of a sheet or workbook: FAIL, not shown, errors, cautions, values that are not up to date. */

export type NoticeKind = 'FAIL' | 'not shown' | 'error' | 'caution' | 'not up to date';

export interface Notice {
  readonly kind: NoticeKind;
  readonly words: string;
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
}

export interface ScanOptions {
  /** One sheet, or the workbook. */
  readonly sheet?: string | undefined;
  readonly progress?: (done: number, of: number) => void;
  /** Asked between cells; true ends the scan. */
  readonly stopped?: () => boolean;
}

export interface Scan {
  readonly notices: readonly Notice[];
  /** Formulas with functions of ours. */
  readonly formulas: number;
}

const OURS = /\bJW\.|_xldudf_JW_/i;
/** The page is to stay alive meanwhile. */
const SLICE_MS = 30;

const verdictIn = (value: Cell): 'FAIL' | 'not shown' | undefined => {
  const text = typeof value === 'string' ? value.trim().toLowerCase() : '';
  return text === 'fail' ? 'FAIL' : text === 'not shown' ? 'not shown' : undefined;
};

type Place = Pick<Notice, 'sheet' | 'row' | 'column'>;
const keyOf = ({ sheet, row, column }: Place): string => `${sheet}!${addressOf(row, column)}`;

/** Reason of a "not shown", working of a FAIL: what the outermost call says of itself. */
function verdictWords(kind: 'FAIL' | 'not shown', explanation: Explanation | undefined): string {
  const call = explanation?.calls[0];
  if (!call) return kind === 'FAIL' ? 'FAIL, typed in or out of another formula' : 'not shown, typed in or out of another formula';
  return kind === 'FAIL' ? `${call.name}: ${call.line || call.summary}` : `${call.name}: ${call.cautions[0] ?? 'not shown'}`;
}

function noticesOf(cell: FormulaCell, { calls, reason, disagrees }: Explanation, verdict: ReturnType<typeof verdictIn>): Notice[] {
  const place = { sheet: cell.sheet, row: cell.row, column: cell.column };
  const notices: Notice[] = [];
  if (disagrees !== '') notices.push({ kind: 'not up to date', words: disagrees, ...place });
  if (cell.value instanceof CellError) notices.push({ kind: 'error', words: `${cell.value.code}${reason === '' ? '' : `: ${reason}`}`, ...place });
  const reasonShown = verdict === 'not shown' ? calls[0]?.cautions[0] : undefined;
  // Several calls of one formula may say the same.
  for (const words of new Set(calls.flatMap(({ cautions }) => cautions))) if (words !== reasonShown) notices.push({ kind: 'caution', words, ...place });
  return notices;
}

/** Every cell that holds the word, typed in, worked out or spilled there. */
async function verdictCells(host: Pick<PaneHost, 'sheets'>, source: PaneHost['source'], sheet: string | undefined): Promise<(Place & { kind: 'FAIL' | 'not shown' })[]> {
  const found: (Place & { kind: 'FAIL' | 'not shown' })[] = [];
  for (const name of await host.sheets()) {
    if (sheet !== undefined && name !== sheet) continue;
    const last = await source.used(name);
    if (!last || last[0] < 0) continue;
    const rows = await source.cells(name, { top: 0, left: 0, bottom: last[0], right: last[1] });
    rows.forEach((cells, row) => cells.forEach((value, column) => {
      const kind = verdictIn(value);
      if (kind) found.push({ kind, sheet: name, row, column });
    }));
  }
  return found;
}

export async function scan(host: PaneHost, { sheet, progress, stopped }: ScanOptions = {}): Promise<Scan | undefined> {
  const source = snapshotOf(host.source);
  const cells = (await host.formulaCells(sheet)).filter(({ formula }) => OURS.test(formula));
  const verdicts = await verdictCells(host, source, sheet);
  const verdictAt = new Map(verdicts.map((each) => [keyOf(each), each.kind]));
  const explained = new Map<string, Explanation>();
  const notices: Notice[] = [];
  let slice = performance.now();
  for (const [place, cell] of cells.entries()) {
    if (performance.now() - slice > SLICE_MS) {
      progress?.(place, cells.length);
      await new Promise((resolve) => setTimeout(resolve));
      slice = performance.now();
    }
    if (stopped?.()) return undefined;
    const explanation = await explain(cell, source, host.traits);
    explained.set(keyOf(cell), explanation);
    notices.push(...noticesOf(cell, explanation, verdictAt.get(keyOf(cell))));
  }
  for (const verdict of verdicts) notices.push({ ...verdict, words: verdictWords(verdict.kind, explained.get(keyOf(verdict))) });
  return { notices, formulas: cells.length };
}

export interface NoticeGroup {
  readonly words: string;
  readonly notices: readonly Notice[];
}

/** One after the other, the gravest first; notices of the same words together, all of them. */
export const KINDS: readonly NoticeKind[] = ['FAIL', 'not shown', 'error', 'caution', 'not up to date'];

export function grouped(notices: readonly Notice[], kind: NoticeKind): NoticeGroup[] {
  const groups = new Map<string, Notice[]>();
  for (const notice of notices) {
    if (notice.kind !== kind) continue;
    const group = groups.get(notice.words);
    if (group) group.push(notice);
    else groups.set(notice.words, [notice]);
  }
  return [...groups].map(([words, list]) => ({ words, notices: list }));
}
