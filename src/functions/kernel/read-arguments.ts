import { Refusal, missing, wrongValue } from '../../core/refusal';
import type { Argument } from './cell';
import type { Member } from './declaration';
import { PassedError, type Reading } from './kind';
import { isBlank } from './scalar';

export interface ReadArguments {
  values: Record<string, unknown>;
  /** Names of arguments left out, in order, whether or not something was taken for them. */
  leftOut: readonly string[];
  /** First datum of a test that is blank, so that its verdict cannot be shown. */
  missingDatum: string | undefined;
}

const NONE: readonly string[] = [];

/** Reads the arguments of a call from left to right; the first fault found is thrown. */
export const readArguments = (member: Member, argv: readonly Argument[], reading: Reading): ReadArguments =>
  readEach(member, argv, reading, (thrown) => { throw thrown; });

/** Every fault of the arguments, in their order and in words; empty where all can be read. */
export function argumentFaults(member: Member, argv: readonly Argument[], reading: Reading): string[] {
  const faults: string[] = [];
  readEach(member, argv, reading, (thrown, name) => {
    if (thrown instanceof Refusal) faults.push(thrown.message);
    else if (thrown instanceof PassedError) faults.push(`${name}: ${thrown.message}`);
    else throw thrown;
  });
  return faults;
}

/** Reads the arguments from left to right and hands on each fault; reading goes on unless that throws. */
function readEach(member: Member, argv: readonly Argument[], reading: Reading, fault: (thrown: unknown, name: string) => void): ReadArguments {
  const values: Record<string, unknown> = {};
  let leftOut = NONE;
  let missingDatum: string | undefined;
  let place = 0;
  for (const [name, kind] of member.order) {
    try {
      if (kind.readRest && kind.shape === 'repeating') {
        const rest = argv.slice(place);
        place = argv.length;
        values[name] = rest.length === 0 && kind.optional ? kind.fallback : kind.readRest(rest, name, reading);
        continue;
      }
      const argument = argv[place];
      place += 1;
      if (!isBlank(argument)) {
        values[name] = kind.read(argument, name, reading);
        continue;
      }
      leftOut = [...leftOut, name];
      if (kind.optional) values[name] = kind.fallback;
      else if (kind.datum && member.face !== undefined && !kind.judgedBlank) missingDatum ??= name;
      else if (kind.datum) values[name] = undefined;
      else throw missing(name);
    } catch (thrown) {
      fault(thrown, name);
    }
  }
  if (argv.length > place) fault(wrongValue(undefined, `${member.name} takes ${place} arguments, got ${argv.length}`), '');
  return { values, leftOut, missingDatum };
}
