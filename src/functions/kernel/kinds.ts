import { counted, digits, figure } from '../../core/figure';
import { outOfRange, wrongValue } from '../../core/refusal';
import { type Unit, unitSuffix } from '../../core/units';
import { type Argument, type Cell, isMatrix } from './cell';
import { type Bounds, type CommonOptions, type Kind, type Read, type Reading, type WordList, kind } from './kind';
import { boundsWords, numberOf, plainWithin, withinBounds } from './number';
import { oneCell, onlyCell, shownCell } from './scalar';

export type Limits = Partial<Omit<Bounds, 'sign'>> & {
  /** `atLeast 0` and `above 0` are the sign rule; leave `sign` out for above 0, the common case. */
  sign?: Bounds['sign'];
  /** The unit is customarily left away where the figure is written, as with k. */
  unitLeftAway?: true;
};

/** All bounds have the same keys in the same order: what reads them then meets one shape of object, which is much faster. */
const boundsOf = ({ sign = 'above 0', atLeast, above, upTo, below, listed }: Limits): Bounds => ({ sign, atLeast, above, upTo, below, listed });

/** 0 is a value of its own where it is allowed and a blank would be read otherwise. */
const zeroMatters = (bounds: Bounds, options: CommonOptions<unknown>): boolean =>
  bounds.sign !== 'above 0' && (bounds.atLeast ?? 0) <= 0 && options.default !== 0;

function readNumber(argument: Argument, name: string, unit: Unit | undefined, bounds: Bounds, zero: boolean, reading: Reading): number {
  const cell = oneCell(argument, name);
  if (cell === 0 && zero && reading.blankArrivesAsZero) throw wrongValue(undefined, `${name} is blank or zero: write 0 as text`);
  return withinBounds(numberOf(cell!, name, unit, reading), bounds, name, unit, reading);
}

/** A number with a unit; the sign rule is "above 0" unless said otherwise. */
export function quantity<const O extends Limits & CommonOptions<number>>(unit: Unit, about: string, options: O): Kind<Read<number, O>> {
  const bounds = boundsOf(options);
  const zero = zeroMatters(bounds, options);
  return kind<number, O>({
    type: 'quantity', about, options, unit, bounds, plain: plainWithin(bounds, false), zeroIsNotBlank: zero,
    read: (argument, name, reading) => readNumber(argument, name, unit, bounds, zero, reading),
    show: (value) => `${figure(value)}${options.unitLeftAway ? '' : unitSuffix(unit)}`,
  });
}

/** A pure ratio or factor; "94 %" reads as 0.94. */
export const ratio = <const O extends Limits & CommonOptions<number>>(about: string, options: O): Kind<Read<number, O>> => quantity('1', about, options);

/** A bare number, money among them: no unit is read. */
export function plainNumber<const O extends Limits & CommonOptions<number>>(about: string, options: O): Kind<Read<number, O>> {
  const bounds = boundsOf(options);
  const zero = zeroMatters(bounds, options);
  return kind<number, O>({
    type: 'number', about, options, bounds, plain: plainWithin(bounds, false), zeroIsNotBlank: zero,
    read: (argument, name, reading) => readNumber(argument, name, undefined, bounds, zero, reading),
    show: figure,
  });
}

/** A setting of a device that may be switched off: a quantity, or the word off. */
export function setting<const O extends Limits & CommonOptions<number | 'off'>>(unit: Unit, about: string, options: O): Kind<Read<number | 'off', O>> {
  const bounds = boundsOf(options);
  return kind<number | 'off', O>({
    type: 'setting', about, options, unit, bounds, plain: plainWithin(bounds, false), words: { off: [] },
    read: (argument, name, reading) => {
      const cell = oneCell(argument, name);
      if (typeof cell === 'string' && cell.trim().toLowerCase() === 'off') return 'off';
      return withinBounds(numberOf(cell!, name, unit, reading), bounds, name, unit, reading);
    },
    show: (value) => (value === 'off' ? 'off' : `${figure(value)}${unitSuffix(unit)}`),
  });
}

/** A whole number from 1. */
export function count<const O extends { upTo?: number; listed?: readonly number[] } & CommonOptions<number>>(about: string, options: O): Kind<Read<number, O>> {
  const bounds = boundsOf({ ...options, ...(options.listed ? {} : { atLeast: 1 }) });
  return kind<number, O>({
    type: 'count', about, options, bounds, plain: plainWithin(bounds, true),
    read: (argument, name, reading) => {
      const value = numberOf(oneCell(argument, name)!, name, undefined, reading);
      if (!Number.isInteger(value) || value < 1) {
        const got = value === 0 && reading.blankArrivesAsZero ? 'is blank or zero' : `got ${figure(value)}`;
        throw wrongValue(name, `${got}, takes a whole number, ${boundsWords(bounds)}`);
      }
      return withinBounds(value, bounds, name, undefined, reading);
    },
    show: figure,
  });
}

const FLAGS: ReadonlyMap<string, boolean> = new Map([['true', true], ['yes', true], ['false', false], ['no', false]]);

export function flag<const O extends CommonOptions<boolean>>(about: string, options: O): Kind<Read<boolean, O>> {
  return kind<boolean, O>({
    type: 'flag', about, options,
    read: (argument, name, reading) => {
      const cell = oneCell(argument, name);
      if (typeof cell === 'boolean') return cell;
      const value = typeof cell === 'string' ? FLAGS.get(cell.trim().toLowerCase()) : undefined;
      if (value !== undefined) return value;
      const got = cell === 0 && reading.blankArrivesAsZero ? 'is blank or zero' : `got ${shownCell(cell)}`;
      throw wrongValue(name, `${got}, takes TRUE or FALSE (yes, no)`);
    },
    show: (value) => (value ? 'TRUE' : 'FALSE'),
  });
}

const folded = (text: string): string => text.trim().toLowerCase().replace(/\s+/g, ' ');

/** Words in words: "copper (cu) · aluminium (al, aluminum)". */
export const wordsShown = (words: WordList): string =>
  Object.entries(words).map(([word, synonyms]) => (synonyms.length ? `${word} (${synonyms.join(', ')})` : word)).join(' · ');

/** One word of a list, any case, with its synonyms. */
export function word<const W extends WordList, const O extends CommonOptions<keyof W & string>>(about: string, words: W, options: O): Kind<Read<keyof W & string, O>> {
  const known = new Map<string, keyof W & string>();
  for (const [entry, synonyms] of Object.entries(words)) for (const spelling of [entry, ...synonyms]) known.set(spelling, entry).set(folded(spelling), entry);
  return kind<keyof W & string, O>({
    type: 'word', about, options, words,
    read: (argument, name, reading) => {
      const cell = oneCell(argument, name);
      const value = typeof cell === 'string' ? known.get(cell) ?? known.get(folded(cell)) : undefined;
      if (value !== undefined) return value;
      const got = cell === 0 && reading.blankArrivesAsZero ? 'is blank or zero' : `got ${shownCell(cell)}`;
      throw wrongValue(name, `${got}, takes ${wordsShown(words)}`);
    },
    show: (value) => value,
  });
}

/** Free text; a number typed as a name is read as its digits. */
export function text<const O extends CommonOptions<string>>(about: string, options: O): Kind<Read<string, O>> {
  return kind<string, O>({
    type: 'text', about, options,
    read: (argument, name, reading) => {
      const cell = oneCell(argument, name);
      if (cell === 0 && reading.blankArrivesAsZero) throw wrongValue(undefined, `${name} is blank or zero: write 0 as text`);
      if (typeof cell === 'number' && Number.isFinite(cell)) return digits(cell);
      if (typeof cell !== 'string') throw wrongValue(name, `got ${shownCell(cell)}, takes text`);
      if (cell.length > 32767) throw outOfRange(name, `got ${cell.length} characters, takes up to 32767`);
      return cell.trim();
    },
    show: (value) => value,
  });
}

/** Any one cell: number, text, truth value. Error cells too, where `errors` is set. */
export function anyCell<const O extends CommonOptions<Cell> & { errors?: true }>(about: string, options: O): Kind<Read<Cell, O>> {
  return kind<Cell, O>({
    type: 'cell', about, options, zeroIsNotBlank: true,
    read: (argument, name, reading) => {
      const cell = options.errors ? onlyCell(argument, name) : oneCell(argument, name);
      if (cell === 0 && reading.blankArrivesAsZero) throw wrongValue(undefined, `${name} is blank or zero: write 0 as text`);
      if (typeof cell === 'number' && !Number.isFinite(cell)) throw outOfRange(name, 'is not a finite number');
      return cell;
    },
    show: (value) => (typeof value === 'number' ? figure(value) : typeof value === 'string' ? value : shownCell(value)),
  });
}

/**
 * Any number of arguments, each as the host gave it: what a question about another function hands on.
 * `zeroIsNotBlank` where the cells themselves are the matter, so that a blank must not pass for a zero.
 */
export const raw = (about: string, options: { zeroIsNotBlank?: true } = {}): Kind<readonly Argument[]> =>
  kind<readonly Argument[], { default: readonly Argument[] }>({
    type: 'raw', shape: 'repeating', about, options: { default: [] }, zeroIsNotBlank: options.zeroIsNotBlank === true,
    read: (argument) => [argument],
    readRest: (rest, name, reading) => {
      const zero = options.zeroIsNotBlank && reading.blankArrivesAsZero && rest.some((argument) => (isMatrix(argument) ? argument.some((row) => row.includes(0)) : argument === 0));
      if (zero) throw wrongValue(undefined, `${name}: a cell is blank or zero: write 0 as text`);
      return rest;
    },
    show: (value) => counted(value.length, 'argument'),
  });
