/**
 * Whether the engine ran out of stack, which is no fault of a calculation: a frame further out has the room to begin anew or to say so.
 * A pattern that is compiled on the last of the stack fails as a SyntaxError; one engine has an error of its own for it.
 */
export const isStackOverflow = (thrown: unknown): boolean =>
  thrown instanceof Error &&
  ((thrown instanceof RangeError && thrown.message.includes('call stack')) ||
    (thrown instanceof SyntaxError && thrown.message.includes('Stack overflow')) ||
    thrown.name === 'InternalError');
