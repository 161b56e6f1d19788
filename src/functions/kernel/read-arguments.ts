import { missing, wrongValue } from '../../core/refusal';
import type { Argument } from './cell';
import type { Member } from './declaration';
import type { Reading } from './kind';
import { isBlank } from './scalar';

export interface ReadArguments {
  values: Record<string, unknown>;
  /** Names of arguments left out, in order, whether or not something was taken for them. */
  leftOut: string[];
  /** First datum of a test that is blank, so that its verdict cannot be shown. */
  missingDatum: string | undefined;
}

/** Reads the arguments of a call from left to right; the first fault found is thrown. */
export function readArguments(member: Member, argv: readonly Argument[], reading: Reading): ReadArguments {
  const values: Record<string, unknown> = {};
  const leftOut: string[] = [];
  let missingDatum: string | undefined;
  let place = 0;
  for (const name in member.parameters) {
    const kind = member.parameters[name]!;
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
    leftOut.push(name);
    if (kind.optional) values[name] = kind.fallback;
    else if (kind.datum && member.face !== undefined) missingDatum ??= name;
    else if (kind.datum) values[name] = undefined;
    else throw missing(name);
  }
  if (argv.length > place) throw wrongValue(undefined, `${member.name} takes ${place} arguments, got ${argv.length}`);
  return { values, leftOut, missingDatum };
}

