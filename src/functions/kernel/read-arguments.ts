import { Refusal, missing, wrongValue } from '../../core/refusal';
import type { Argument } from './cell';
import type { Member } from './declaration';
import { PassedError, type Reading } from './kind';
import { isBlank } from './scalar';

export interface ReadArguments {
  readonly values: Readonly<Record<string, unknown>>;
  /** Names of arguments left out, in order, whether or not something was taken for them. */
  readonly leftOut: readonly string[];
  /** First datum of a test that is blank, so that its verdict cannot be shown. */
  readonly missingDatum: string | undefined;
  /** What the reader says of arguments it accepted. */
  readonly remarks: readonly string[];
}

/** Reads the arguments of a call from left to right; the first fault found is thrown. */
export function readArguments(member: Member, argv: readonly Argument[], blankArrivesAsZero: boolean): ReadArguments {
  const reader = new ArgumentReader(member, argv, blankArrivesAsZero);
  reader.values = member.record(reader);
  if (argv.length > member.order.length) reader.further();
  return reader;
}

/** A fault of one argument; '' where it is none of them in particular. The words name the argument. */
export interface ArgumentFault {
  readonly argument: string;
  readonly words: string;
}

/** Every fault of the arguments, in their order; empty where all can be read. */
export function argumentFaults(member: Member, argv: readonly Argument[], blankArrivesAsZero: boolean): ArgumentFault[] {
  const reader = new ArgumentReader(member, argv, blankArrivesAsZero);
  const faults: ArgumentFault[] = [];
  const note = (name: string, read: () => void): void => {
    try {
      read();
    } catch (thrown) {
      if (thrown instanceof Refusal) faults.push({ argument: name, words: thrown.message });
      else if (thrown instanceof PassedError) faults.push({ argument: name, words: `${name}: ${thrown.message}` });
      else throw thrown;
    }
  };
  for (const [place, [name]] of member.order.entries()) note(name, () => reader.read(place));
  if (argv.length > member.order.length) note('', () => reader.further());
  return faults;
}

const NONE: readonly string[] = [];
const NOTHING: Readonly<Record<string, unknown>> = {};

/** Goes over the arguments of one call; each fault is thrown, and reading may go on behind it. */
class ArgumentReader implements ReadArguments, Reading {
  values = NOTHING;
  leftOut = NONE;
  missingDatum: string | undefined = undefined;
  remarks = NONE;

  constructor(private readonly member: Member, private readonly argv: readonly Argument[], readonly blankArrivesAsZero: boolean) {}

  remark(text: string): void {
    this.remarks = [...this.remarks, text];
  }

  read(place: number): unknown {
    const argument = this.argv[place];
    const { least, most, whole } = this.member.plain[place]!;
    const isPlain = typeof argument === 'number' && argument >= least && argument <= most && argument !== 0 && (!whole || Number.isInteger(argument));
    return isPlain ? argument : this.readInFull(place);
  }

  private readInFull(place: number): unknown {
    const [name, kind] = this.member.order[place]!;
    if (kind.readRest) return kind.readRest(this.argv.slice(place), name, this);
    const argument = this.argv[place];
    return isBlank(argument) ? this.inPlaceOf(place) : kind.read(argument, name, this);
  }

  /** What is taken for an argument left blank. */
  private inPlaceOf(place: number): unknown {
    const [name, kind] = this.member.order[place]!;
    this.leftOut = [...this.leftOut, name];
    if (kind.optional) return kind.fallback;
    if (!kind.datum) throw missing(name);
    if (this.member.face !== undefined && !kind.judgedBlank) this.missingDatum ??= name;
    return undefined;
  }

  /** Arguments behind the last one are a fault, unless it takes all that are left. */
  further(): void {
    const { member: { name, order }, argv } = this;
    if (!order.at(-1)?.[1].readRest) throw wrongValue(undefined, `${name} takes ${order.length} arguments, got ${argv.length}`);
  }
}
