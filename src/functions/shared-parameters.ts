import { count, quantity, ratio, word } from './kernel/kinds';

/** Arguments that several families take: one wording and one range for each. */

export const volts = () => quantity('V', 'nominal voltage between lines', { atLeast: 50, upTo: 1000 });
export const cMax = () => quantity('1', 'voltage factor of the greatest fault', { atLeast: 1, upTo: 1.1, default: 1.05 });
export const cMin = () => quantity('1', 'voltage factor of the least fault', { atLeast: 0.9, upTo: 1, default: 0.95 });
export const hertz = () => quantity('Hz', 'frequency', { atLeast: 45, upTo: 65, default: 50 });

export const kFactor = () => quantity('A√s/mm²', 'adiabatic factor k of the conductor', { atLeast: 15, upTo: 300, unitLeftAway: true });
export const csa = () => quantity('mm²', 'conductor cross-section', { upTo: 3000 });
export const metal = () => word('conductor metal', { copper: ['cu'], aluminium: ['al', 'aluminum'] }, {});
export const runs = () => count('conductors in parallel for each line', { default: 1, upTo: 24 });

/** Caution of every figure that shares a fault evenly among parallel conductors. */
export const evenSharing = (args: { runs: number }): string | false =>
  args.runs > 1 && 'even sharing taken: a fault inside one run loads that run alone';

export const transformerRating = () => quantity('kVA', 'rated power of the transformer', { upTo: 10000 });
export const transformerUk = () => quantity('%', 'rated short-circuit voltage', { atLeast: 2, upTo: 15 });
export const motorPower = () => quantity('kW', 'shaft power of the running motors', { upTo: 20000 });
export const powerFactor = () => ratio('power factor at rated load', { upTo: 1 });
export const efficiency = () => ratio('efficiency at rated load', { upTo: 1 });

export const edge = () => word('edge of the curve: the slowest device, the mean, the fastest', { slow: [], mean: [], fast: [] }, {});
export const curveTolerance = (of = 'the points') => quantity('%', `tolerance of ${of} in current; 0 if they are already the edge`, { sign: 'atLeast 0', upTo: 50 });
export const faultLevel = (about = 'fault level at the device') => quantity('kA', about, { upTo: 300 });
export const instantaneousTolerance = () => quantity('%', 'tolerance of the instantaneous release in current', { sign: 'atLeast 0', upTo: 50, default: 20 });

/** Caution of every figure read off a mean curve that has a tolerance. */
export const meanCurve = (args: { edge: string; tolerance_pct: number }): string | false =>
  args.edge === 'mean' && args.tolerance_pct > 0 && 'mean curve: not for the record';
