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
