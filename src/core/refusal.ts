/** Worksheet error codes that a calculation may answer with. */
export type RefusalCode = '#VALUE!' | '#NUM!' | '#N/A';

export interface RefusalFacts {
  code: RefusalCode;
  /** Argument at fault, where there is one. */
  argument?: string;
  /** What is wrong, in words that follow the argument's name. */
  problem: string;
}

/**
 * A calculation that is refused, with its reason. Thrown inside the core so that formulas read as the standard does,
 * and turned into a value at one place, where the function is called.
 */
export class Refusal extends Error {
  readonly code: RefusalCode;
  readonly argument: string | undefined;
  readonly problem: string;

  constructor({ code, argument, problem }: RefusalFacts) {
    super(argument === undefined ? problem : `${argument}: ${problem}`);
    this.name = 'Refusal';
    this.code = code;
    this.argument = argument;
    this.problem = problem;
  }
}

/** Outside the limits of a method or a table: `#NUM!`. */
export const outOfRange = (argument: string | undefined, problem: string): Refusal => new Refusal({ code: '#NUM!', argument, problem });

/** Not the kind of value asked for: `#VALUE!`. */
export const wrongValue = (argument: string | undefined, problem: string): Refusal => new Refusal({ code: '#VALUE!', argument, problem });

/** Not there: `#N/A`. */
export const notAvailable = (argument: string | undefined, problem: string): Refusal => new Refusal({ code: '#N/A', argument, problem });

/** A needed argument was left blank. */
export const missing = (argument: string): Refusal => new Refusal({ code: '#N/A', problem: `missing: ${argument}` });
