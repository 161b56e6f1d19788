import { raise, refuse } from './errors';
import { LIMITS } from './limits';
import { Lambda, type Value } from './values';

/** Variables of LET and parameters of LAMBDA, by place; the compiler knows the places from the names. */
export interface Frame {
  readonly values: Value[];
  readonly parent: Frame | undefined;
}

/** Names known at a point of the formula. */
export interface Scope {
  readonly names: string[];
  readonly parent: Scope | undefined;
}

/** How a variable is reached from a point of the formula: so many frames out, then by place. */
export function placeOf(scope: Scope | undefined, name: string): { out: number; index: number } | undefined {
  const wanted = name.toLowerCase();
  let out = 0;
  for (let level = scope; level; level = level.parent, out++) {
    const index = level.names.lastIndexOf(wanted);
    if (index >= 0) return { out, index };
  }
  return undefined;
}

export function variable(frame: Frame | undefined, out: number, index: number): Value {
  let level = frame;
  for (let step = out; step > 0; step--) level = level?.parent;
  return level?.values[index];
}

// Calls under way; a formula is worked out in one go, so that a plain count is enough to stop endless recursion.
let depth = 0;

export function callLambda(lambda: Value, args: Value[]): Value {
  if (!(lambda instanceof Lambda)) return raise('#REF!', 'what is called is not a LAMBDA');
  if (args.length > lambda.parameters) return raise('#VALUE!', `the LAMBDA takes ${lambda.parameters} arguments, got ${args.length}`);
  if (depth >= LIMITS.lambdaDepth) return refuse(`a LAMBDA calls itself more than ${LIMITS.lambdaDepth} deep`);
  depth++;
  try {
    return lambda.call(args);
  } finally {
    depth--;
  }
}

/** The LAMBDA that a function such as MAP was given, checked for its number of parameters. */
export function lambdaOf(value: Value, parameters: number, name: string): (...args: Value[]) => Value {
  if (!(value instanceof Lambda)) return raise('#VALUE!', `${name} takes a LAMBDA as its last argument`);
  if (value.parameters < parameters) return raise('#VALUE!', `${name} calls its LAMBDA with ${parameters} arguments, it takes ${value.parameters}`);
  return (...args) => callLambda(value, args);
}
