import type { Unit } from '../../core/units';
import type { Argument, CellError } from './cell';

/** What a kind of argument looks like from outside: hosts, help and handbook read these facts and nothing else. */
export type KindType =
  | 'quantity' | 'setting' | 'number' | 'count' | 'flag' | 'word' | 'text' | 'impedance' | 'impedances'
  | 'points' | 'table' | 'column' | 'cell' | 'raw';

/** One cell; a range read as a whole; or any number of cells and ranges at the end of the list. */
export type Shape = 'cell' | 'range' | 'repeating';

/** Sign rule (breaking it is `#VALUE!`) and limits (passing them is `#NUM!`). */
export interface Bounds {
  sign: 'above 0' | 'atLeast 0' | 'any';
  atLeast?: number;
  above?: number;
  upTo?: number;
  below?: number;
  /** Allowed figures, nothing between them. */
  listed?: readonly number[];
}

/** Bare numbers that are taken as they are, without being read: from `least` to `most`, without 0, which a host may mean as a blank. */
export interface Plain {
  readonly least: number;
  readonly most: number;
  readonly whole: boolean;
}

/** Nothing is taken without being read. */
const NOTHING_PLAIN: Plain = { least: Infinity, most: -Infinity, whole: false };

export type WordList = Readonly<Record<string, readonly string[]>>;

/** What a host tells the reader about itself, and where the reader leaves its remarks. */
export interface Reading {
  /** The host hands a blank cell over as the number 0, so a 0 may be a blank. */
  readonly blankArrivesAsZero: boolean;
  /** Something worth a second look in an argument that was accepted. */
  remark(text: string): void;
}

/** For cells whose blanks were told from zeros already. */
export const settledReading: Reading = { blankArrivesAsZero: false, remark: () => undefined };

export interface Kind<T> {
  readonly type: KindType;
  readonly shape: Shape;
  /** What the argument is, in a few words. */
  readonly about: string;
  /** May be left out. */
  readonly optional: boolean;
  /** A datum of a test: left blank, the verdict is not shown. */
  readonly datum: boolean;
  /** A datum whose blank the test judges itself, because another datum may do in its place. */
  readonly judgedBlank: boolean;
  /** Taken where the argument is left out. */
  readonly fallback: T | undefined;
  /** What is done where the argument is left out, in words, if there is no figure for it. */
  readonly fallbackWords: string | undefined;
  readonly unit: Unit | undefined;
  readonly bounds: Bounds | undefined;
  /** What `read` would give back unchanged. A number outside need not be wrong: it is read. */
  readonly plain: Plain;
  readonly words: WordList | undefined;
  /** 0 is allowed here and is not what a blank means, so a host that cannot tell them apart must ask for text. */
  readonly zeroIsNotBlank: boolean;
  /** Reads an argument that is not blank; throws a Refusal, or PassedError for an error cell. */
  read(argument: Argument, name: string, reading: Reading): T;
  /** Reads all the arguments from this place on; only where the shape is repeating. */
  readonly readRest: ((rest: readonly Argument[], name: string, reading: Reading) => T) | undefined;
  /** The value as working and messages show it, with its unit. */
  show(value: T): string;
}

/** An error cell on its way through: the function answers with it as it is. */
export class PassedError extends Error {
  constructor(readonly cell: CellError) {
    super(cell.message || cell.code);
    this.name = 'PassedError';
  }
}

/** Options that every kind takes. `optional` has no default of its own; `defaultWords` says what then happens. */
export interface CommonOptions<T> {
  default?: T;
  defaultWords?: string;
  optional?: true;
  datum?: true | 'judged';
}

/** Type of the value that the formula gets: undefined only where it can be left out without a default. */
export type Read<T, O> = O extends { optional: true } | { defaultWords: string } | { datum: 'judged' } ? T | undefined : T;

interface KindSource<T> {
  type: KindType;
  shape?: Shape;
  about: string;
  options: CommonOptions<T>;
  unit?: Unit;
  bounds?: Bounds;
  plain?: Plain | undefined;
  words?: WordList;
  zeroIsNotBlank?: boolean;
  read(argument: Argument, name: string, reading: Reading): T;
  readRest?(rest: readonly Argument[], name: string, reading: Reading): T;
  show(value: T): string;
}

export function kind<T, O extends CommonOptions<T>>(source: KindSource<T> & { options: O }): Kind<Read<T, O>> {
  const { options } = source;
  const built: Kind<T> = {
    type: source.type,
    shape: source.shape ?? 'cell',
    about: source.about,
    optional: options.optional === true || options.default !== undefined || options.defaultWords !== undefined,
    datum: options.datum !== undefined,
    judgedBlank: options.datum === 'judged',
    fallback: options.default,
    fallbackWords: options.defaultWords,
    unit: source.unit,
    bounds: source.bounds,
    plain: source.plain ?? NOTHING_PLAIN,
    words: source.words,
    zeroIsNotBlank: source.zeroIsNotBlank ?? false,
    read: source.read,
    readRest: source.shape === 'repeating' ? source.readRest : undefined,
    show: source.show,
  };
  return built as Kind<Read<T, O>>;
}
