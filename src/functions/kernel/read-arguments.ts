import { Refusal, missing, wrongValue } from '../../core/refusal';
import type { Argument } from './cell';
import type { Member } from './declaration';
import { type Kind, PassedError, type Reading } from './kind';
import { isBlank } from './scalar';

export interface ReadArguments {
  values: Record<string, unknown>;
  /** Names of arguments left out, in order, whether or not something was taken for them. */
  leftOut: readonly string[];
  /** First datum of a test that is blank, so that its verdict cannot be shown. */
  missingDatum: string | undefined;
}

/** Reads the arguments of a call from left to right; the first fault found is thrown. */
export function readArguments(member: Member, argv: readonly Argument[], reading: Reading): ReadArguments {
  const reader = new ArgumentReader(member, argv, reading);
  for (const [name, kind] of member.order) reader.read(name, kind);
  reader.end();
  return reader;
}

/** A fault of one argument; '' where it is none of them in particular. The words name the argument. */
export interface ArgumentFault {
  readonly argument: string;
  readonly words: string;
}

/** Every fault of the arguments, in their order; empty where all can be read. */
export function argumentFaults(member: Member, argv: readonly Argument[], reading: Reading): ArgumentFault[] {
  const reader = new ArgumentReader(member, argv, reading);
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
  for (const [name, kind] of member.order) note(name, () => reader.read(name, kind));
  note('', () => reader.end());
  return faults;
}

/** Goes over the arguments of one call; each fault is thrown, and reading may go on behind it. */
class ArgumentReader implements ReadArguments {
  readonly values: Record<string, unknown> = {};
  readonly leftOut: string[] = [];
  missingDatum: string | undefined;
  private place = 0;

  constructor(private readonly member: Member, private readonly argv: readonly Argument[], private readonly reading: Reading) {}

  read(name: string, kind: Kind<unknown>): void {
    const { argv, reading } = this;
    if (kind.shape === 'repeating' && kind.readRest) {
      const rest = argv.slice(this.place);
      this.place = argv.length;
      this.values[name] = rest.length === 0 && kind.optional ? kind.fallback : kind.readRest(rest, name, reading);
      return;
    }
    const argument = argv[this.place];
    this.place += 1;
    this.values[name] = isBlank(argument) ? this.inPlaceOf(name, kind) : kind.read(argument, name, reading);
  }

  /** What is taken for an argument left blank. */
  private inPlaceOf(name: string, kind: Kind<unknown>): unknown {
    this.leftOut.push(name);
    if (kind.optional) return kind.fallback;
    if (!kind.datum) throw missing(name);
    if (this.member.face !== undefined && !kind.judgedBlank) this.missingDatum ??= name;
    return undefined;
  }

  /** Arguments behind the last one are a fault. */
  end(): void {
    const { member, argv, place } = this;
    if (argv.length > place) throw wrongValue(undefined, `${member.name} takes ${place} arguments, got ${argv.length}`);
  }
}
