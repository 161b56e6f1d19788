import { Complex, complexText } from '../../core/complex';
import { type Judgement, notShown } from '../../core/judgement';
import { Refusal, notAvailable, outOfRange, wrongValue } from '../../core/refusal';
import { isStackOverflow } from '../../core/stack';
import { Recorder, type Working, silent } from '../../core/working';
import type { Catalogue } from './catalogue';
import { type Argument, type Cell, CellError, type Matrix } from './cell';
import type { Entry, Member, Questions, Result } from './declaration';
import { PassedError } from './kind';
import { type ArgumentFault, type ReadArguments, argumentFaults, readArguments } from './read-arguments';
import { shortened } from './scalar';

/** What a host says of itself. */
export interface HostTraits {
  /** Desktop Excel hands a blank cell over as 0. */
  readonly blankArrivesAsZero: boolean;
}

/** A host that hands blanks over as blanks: workbench, command line, tests. */
export const plainHost: HostTraits = { blankArrivesAsZero: false };

/** All that is known of one call. */
export interface Outcome {
  readonly entry: Entry;
  /** What the cell shows. */
  readonly value: Cell | Matrix;
  /** Set where the call was refused, or an error cell passed through. */
  readonly error?: CellError;
  /** Arguments after conversion and defaults; undefined where reading failed. */
  readonly args?: Readonly<Record<string, unknown>>;
  readonly leftOut: readonly string[];
  /** What the formula answered. */
  readonly result?: Result;
  /** Reasons and remarks: why a verdict is not shown, then the cautions of this call. */
  readonly cautions: readonly string[];
  readonly work: Working;
}

const isJudgement = (result: Result): result is Judgement => typeof result === 'object' && 'verdict' in result;

const notFinite = (): Refusal => outOfRange(undefined, 'the result is not a finite number');

function finite(value: number): number {
  if (!Number.isFinite(value)) throw notFinite();
  return value === 0 ? 0 : value;
}

const shownFigure = (value: number | string | Complex): Cell => {
  if (typeof value === 'number') return finite(value);
  if (typeof value === 'string') return value;
  finite(value.re);
  finite(value.im);
  return complexText(value);
};

/** The cell or cells that a result fills which is no number. */
function shown(member: Member, args: Readonly<Record<string, unknown>>, result: Exclude<Result, number>): Cell | Matrix {
  if (typeof result !== 'object' || result instanceof Complex) return shownFigure(result);
  if (isJudgement(result)) {
    if (member.face !== 'margin') return result.verdict;
    if (result.marginPct === undefined) throw notAvailable(undefined, result.reason ?? 'no margin can be worked');
    return finite(result.marginPct);
  }
  const width = result.headings.length;
  const rows = result.rows.map((row) => Array.from({ length: width }, (_, i) => shownFigure(row[i] ?? '')));
  return args['headers'] === false && rows.length > 0 ? rows : [[...result.headings], ...rows];
}

const errorOf = (thrown: unknown, member: Member): CellError => {
  if (thrown instanceof Refusal) return new CellError(thrown.code, thrown.message);
  if (thrown instanceof PassedError) return thrown.cell;
  // A fault of ours: never a stack trace in a cell, and never a number.
  return new CellError('#VALUE!', `internal fault in ${member.name}: no result; please report the call`);
};

const lacking = (datum: string): Judgement => notShown(`missing: ${datum}`);

function refused(entry: Entry, thrown: unknown, work: Working): Outcome {
  // Whoever called from deep inside of a chain of formulas tries again with the whole stack.
  if (isStackOverflow(thrown)) throw thrown;
  const error = errorOf(thrown, entry.member);
  return { entry, value: error, error, leftOut: [], cautions: [`input: ${error.message || error.code}`], work };
}

class Answered implements Outcome {
  constructor(
    readonly entry: Entry,
    readonly value: Cell | Matrix,
    private readonly read: ReadArguments,
    readonly result: Result,
    readonly work: Working,
  ) {}
  get args(): Readonly<Record<string, unknown>> {
    return this.read.values;
  }
  get leftOut(): readonly string[] {
    return this.read.leftOut;
  }
  get cautions(): readonly string[] {
    return cautionsOf(this.entry.member, this.read, this.result);
  }
}

/** Calls one function. Never throws for bad input: a refusal is a value with its reason. */
export function call(catalogue: Catalogue, entry: Entry, argv: readonly Argument[], traits: HostTraits = plainHost, work: Working = silent): Outcome {
  const { member } = entry;
  try {
    const read = readArguments(member, argv, traits.blankArrivesAsZero);
    const result = read.missingDatum === undefined ? member.compute(read.values, work, new Asking(catalogue, traits)) : lacking(read.missingDatum);
    return new Answered(entry, typeof result === 'number' ? finite(result) : shown(member, read.values, result), read, result, work);
  } catch (thrown) {
    return refused(entry, thrown, work);
  }
}

function cautionsOf(member: Member, read: ReadArguments, result: Result): string[] {
  const reason = isJudgement(result) && result.verdict === 'not shown' ? [result.reason ?? 'not shown'] : [];
  const own = read.missingDatum !== undefined ? [] : member.cautions(read.values, result).filter((text): text is string => typeof text === 'string' && text !== '');
  return [...reason, ...own, ...read.remarks];
}

/** Every fault of the arguments of a call. */
export const faultsOf = ({ member }: Entry, argv: readonly Argument[], traits: HostTraits): ArgumentFault[] =>
  argumentFaults(member, argv, traits.blankArrivesAsZero);

/** What functions that ask about others are handed: they see other functions through the same door as any host. */
class Asking implements Questions {
  constructor(private readonly catalogue: Catalogue, private readonly traits: HostTraits) {}
  get entries(): readonly Entry[] {
    return this.catalogue.entries;
  }
  entry(functionName: string): Entry {
    const found = this.catalogue.find(functionName);
    if (!found) throw wrongValue('function_name', `no function named ${shortened(functionName)}`);
    return found;
  }
  ask(functionName: string, argv: readonly Argument[]): Outcome {
    return call(this.catalogue, this.entry(functionName), argv, this.traits, new Recorder());
  }
  faults(functionName: string, argv: readonly Argument[]): readonly string[] {
    return faultsOf(this.entry(functionName), argv, this.traits).map(({ words }) => words);
  }
}
