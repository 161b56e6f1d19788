import { CellError, type ErrorCode } from '../../functions/kernel/cell';

/**
 * Inside the evaluator an error travels as a thrown CellError, so that a formula reads as what it computes.
 * Where Excel looks at an error instead of passing it on (IFERROR, ISNUMBER, arguments of our own functions …),
 * `attempt` turns it back into a value.
 */
export function raise(code: ErrorCode, message = ''): never {
  throw new CellError(code, message);
}

/**
 * What this evaluator cannot work out, though Excel might. IFERROR and its like must not paper over it: it passes
 * through all of them and ends as the result of the formula, with its words.
 */
export class NotSupported extends CellError {}

export function refuse(message: string): never {
  throw new NotSupported('#UNSUPPORTED!', message);
}

export const isError = (value: unknown): value is CellError => value instanceof CellError;

/** The value, or the error that came up on the way to it. Anything else that is thrown passes on. */
export function attempt<T>(compute: () => T): T | CellError {
  try {
    return compute();
  } catch (thrown) {
    return trapped(thrown);
  }
}

/** For catch clauses: a thrown cell error as a value; all else goes on. */
export function trapped(thrown: unknown): CellError {
  if (thrown instanceof CellError && !(thrown instanceof NotSupported)) return thrown;
  throw thrown;
}
