import { amperesTyped, fractionTyped, kiloampereTripTyped, kiloamperesTyped, kilojoulesTyped, lineVoltsTyped } from '../../src/functions/plausible';
import { evenSharing, meanCurve } from '../../src/functions/shared-parameters';

/** Where a figure is questioned, from both sides. */
test.each([
  ['amperes like kiloamperes', kiloamperesTyped, [0.999, 0.01], [1, 63]],
  // Residual-current devices trip at their rating, 6 mA to 1 A, and at five times it.
  ['a trip current like kiloamperes', kiloampereTripTyped, [4.99, 1.15, 0.031, 0.2, 2], [5, 320, 0.03, 0.15, 0.3, 0.5, 1, 1.5, 2.5, 0.05]],
  ['kiloamperes like amperes', amperesTyped, [200.1, 250], [200, 50]],
  ['a per cent like a fraction', fractionTyped, [0.1, 0.999], [0, 1, 10]],
  ['line to earth like between lines', lineVoltsTyped, [380, 400, 415, 440, 480, 400 * (1 + 1e-9)], [230, 240, 277, 399, 401, 690]],
  ['A²s like kA²s', kilojoulesTyped, [0.21, 0.999], [1, 8265625]],
] as const)('%s', (_, question, questioned, left) => {
  for (const figure of questioned) expect(question('it', figure)).toMatch(/^it is .*\?$/);
  for (const figure of left) expect(question('it', figure)).toBe(false);
});

test('sharing is questioned from two runs on, a mean curve where it has a tolerance', () => {
  expect([1, 2].map((runs) => evenSharing({ runs }) !== false)).toEqual([false, true]);
  expect([['mean', 10], ['mean', 0], ['slow', 10], ['fast', 10]].map(([edge, tolerance_pct]) => meanCurve({ edge: String(edge), tolerance_pct: Number(tolerance_pct) }) !== false)).toEqual([true, false, false, false]);
});
