import { type Unit, kindOf, unitOf } from '../../core/units';
import type { Cell } from './cell';

const PEAK = /\s+peak(?=\s*[)\]]?$)/i;
const MARKED = /[,/([]\s*([^\s,/()[\]]+)\s*[)\]]?$/;
const LAST_WORD = /\s(\S{2,})$/;
/** Also the least of a band. */
const AMBIGUOUS = 'min';

const withoutPeak = (text: string): string => text.trim().replace(PEAK, '');

/** Unit in which a heading says its column stands: "kA", "I, kA", "t (ms)", "t / ms", "I²t kA²s"; undefined where it names none. */
function headingUnit(heading: string): Unit | undefined {
  const text = withoutPeak(heading);
  const marked = MARKED.exec(text)?.[1];
  if (marked !== undefined) return unitOf(marked);
  const bare = [text, LAST_WORD.exec(text)?.[1] ?? ''].filter((word) => word !== AMBIGUOUS);
  return bare.map(unitOf).find((unit) => unit !== undefined);
}

/**
 * What is wrong with a heading that names another unit of the kind its column takes: points in kA read as A are wrong by a thousand.
 * Nothing is converted, for nobody can tell which of the two is the slip.
 */
function headingFault(heading: Cell | undefined, columnUnit: string): string | undefined {
  const named = typeof heading === 'string' ? headingUnit(heading) : undefined;
  const unit = unitOf(withoutPeak(columnUnit));
  if (named === undefined || unit === undefined || named === unit || kindOf(named) !== kindOf(unit)) return undefined;
  return `heading says ${named}, the column is taken in ${columnUnit}`;
}

/** What is wrong with the headings of a curve, whose columns are taken in these units. */
export const headingFaults = (headings: readonly (Cell | undefined)[], units: readonly string[]): string[] =>
  units.flatMap((unit, column) => headingFault(headings[column], unit) ?? []);
