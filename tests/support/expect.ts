import { complex, parseComplex } from '../../src/core/complex';
import { type Argument, CellError } from '../../src/functions/kernel/cell';
import { outcomeOf, run } from './run';

/** A result as a worksheet error with its message. */
export const refusal = (code: CellError['code'], message: string): CellError => new CellError(code, message);

/** A printed figure of six digits: half a unit of the last one. */
const half = (printed: number): number => (printed === 0 ? 1e-9 : 0.5 * 10 ** (Math.floor(Math.log10(Math.abs(printed))) - 5) * 1.001);

/** Compares a result with a figure, or with complex text, printed to six digits. */
export function expectPrinted(name: string, argv: readonly Argument[], printed: number | string): void {
  const value = run(name, ...argv);
  if (typeof printed === 'number') {
    expect(typeof value).toBe('number');
    expect(Math.abs((value as number) - printed)).toBeLessThanOrEqual(half(printed));
    return;
  }
  const expected = parseComplex(printed)!;
  const got = typeof value === 'number' ? complex(value, 0) : parseComplex(String(value));
  if (!got) throw new Error(`${name} gave ${JSON.stringify(value)}, expected ${printed}`);
  expect(Math.abs(got.re - expected.re)).toBeLessThanOrEqual(half(expected.re));
  expect(Math.abs(got.im - expected.im)).toBeLessThanOrEqual(half(expected.im));
}

/** A refusal's code and message. */
export const expectRefused = (name: string, argv: readonly Argument[], code: CellError['code'], message: string): void =>
  expect(outcomeOf(name, argv).value).toEqual(refusal(code, message));
