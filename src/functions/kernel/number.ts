import { SLACK } from '../../core/judgement';
import { outOfRange, wrongValue } from '../../core/refusal';
import { type Unit, convert, kindOf, unitOf, unitSuffix } from '../../core/units';
import type { Cell } from './cell';
import type { Bounds, Plain, Reading } from './kind';
import { shownCell } from './scalar';

const NUMBER = String.raw`[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?`;
const NUMBER_ALONE = new RegExp(`^${NUMBER}$`);
const NUMBER_AND_UNIT = new RegExp(`^(${NUMBER})\\s*(.*)$`);

/** A text that is a bare number. */
export const isNumberText = (text: string): boolean => NUMBER_ALONE.test(text.trim());

/** Limits in words: "above 0, up to 3 s", "50 to 1000 V". */
export function boundsWords(bounds: Bounds, unit?: Unit): string {
  const suffix = unitSuffix(unit);
  const { listed, upTo, below } = bounds;
  if (listed) return `one of ${listed.join(', ')}${suffix}`;
  const low = bounds.atLeast ?? (bounds.sign === 'atLeast 0' ? 0 : undefined);
  const above = bounds.above ?? (bounds.sign === 'above 0' ? 0 : undefined);
  const high = upTo !== undefined ? `up to ${figure(upTo)}` : below !== undefined ? `below ${figure(below)}` : undefined;
  if (low !== undefined) {
    if (upTo !== undefined) return `${figure(low)} to ${figure(upTo)}${suffix}`;
    return `${figure(low)} or more${high === undefined ? '' : `, ${high}`}${suffix}`;
  }
  if (above !== undefined) return `above ${figure(above)}${high === undefined ? '' : `, ${high}`}${suffix}`;
  return high === undefined ? `any number${suffix === '' ? '' : ` in${suffix}`}` : `${high}${suffix}`;
}

/** Nobody counts zeros: 1e13, but 1000000. */
const figure = (limit: number): string => (Math.abs(limit) >= 1e7 ? limit.toExponential().replace('e+', 'e') : String(limit));

/** Figures as messages show them; a limit that is no round binary figure is not spoiled by it. */
const shown = (value: number): string => String(Number(value.toPrecision(12)));

/** A step over an open limit: more than the distance to the next number, so never short of it. */
const past = (limit: number): number => Math.max(Math.abs(limit) * 2 * Number.EPSILON, Number.MIN_VALUE);

/** The numbers that need no look at each limit; those in a list do, since the list's own figure is taken for them. */
export function plainWithin({ sign, atLeast, above, upTo, below, listed }: Bounds, whole: boolean): Plain | undefined {
  if (listed) return undefined;
  const signed = sign === 'any' ? -Number.MAX_VALUE : 0;
  return {
    least: Math.max(signed, atLeast ?? -Infinity, above === undefined ? -Infinity : above + past(above)),
    most: Math.min(Number.MAX_VALUE, upTo ?? Infinity, below === undefined ? Infinity : below - past(below)),
    whole,
  };
}

/** Sign rule, list and limits of a number. Guards are written so that no number slips through that fails to compare. */
export function withinBounds(value: number, bounds: Bounds, name: string, unit: Unit | undefined, reading: Reading): number {
  const { sign, atLeast, above, upTo, below, listed } = bounds;
  if ((sign === 'above 0' && !(value > 0)) || (sign === 'atLeast 0' && !(value >= 0))) {
    const got = value === 0 && reading.blankArrivesAsZero ? 'is blank or zero' : `got ${shown(value)}`;
    throw wrongValue(name, `${got}, takes ${boundsWords(bounds, unit)}`);
  }
  if (listed) {
    const entry = listed.find((figure) => Math.abs(figure - value) <= figure * SLACK);
    if (entry === undefined) throw outOfRange(name, `${shown(value)} is not in the list [${listed.join(', ')}]`);
    return entry;
  }
  const inside =
    (atLeast === undefined || value >= atLeast - Math.abs(atLeast) * SLACK) &&
    (above === undefined || value > above) &&
    (upTo === undefined || value <= upTo + Math.abs(upTo) * SLACK) &&
    (below === undefined || value < below);
  if (!inside) throw outOfRange(name, `${shown(value)} is outside ${boundsWords(bounds, unit)}`);
  return value;
}

/**
 * A number out of a cell: as it is, or from text with or without a unit of the kind asked for.
 * @param unit unit asked for; undefined where only bare numbers are taken
 */
export function numberOf(cell: Exclude<Cell, null>, name: string, unit: Unit | undefined, reading: Reading): number {
  if (typeof cell === 'number') {
    if (!Number.isFinite(cell)) throw outOfRange(name, 'is not a finite number');
    return cell;
  }
  const takes = unit === undefined || unit === '1' ? 'a number' : `a number in ${unit}`;
  if (typeof cell !== 'string') throw wrongValue(name, `got ${shownCell(cell)}, takes ${takes}`);
  const match = NUMBER_AND_UNIT.exec(cell.replace(/\u2212/g, '-').trim());
  if (!match) throw wrongValue(name, `got ${shownCell(cell)}, takes ${takes}`);
  const value = Number(match[1]);
  if (!Number.isFinite(value)) throw outOfRange(name, `got ${shownCell(cell)}, which is not a finite number`);
  const written = match[2]!;
  if (written === '') return value;
  if (/^[\d.,'\s]/.test(written)) throw wrongValue(name, `got ${shownCell(cell)}, takes one number with a decimal point and no thousands marks`);
  const from = unitOf(written);
  if (unit === undefined) throw wrongValue(name, `got ${shownCell(cell)}, takes a number without a unit`);
  if (unit === '%' && from === '%') return value;
  const converted = from === undefined || unit === '%' ? undefined : convert(value, from, unit);
  if (converted === undefined) {
    const asked = unit === '1' ? 'a plain number or %' : unit;
    const what = from === undefined ? `${written} is not a unit known here` : `${from} is ${kindOf(from)}`;
    throw wrongValue(name, `got ${shownCell(cell)}: ${what}, takes ${asked}`);
  }
  if (from === 'kA²s') reading.remark(`${name}: kA²s read as 10⁶ A²s; some sheets mean 10³ A²s by it`);
  return converted;
}
