/**
 * Constants of the adiabatic factor k, by metal. K is √(Qc·(β + 20)/ρ20), which the standard prints as a whole number; its tables
 * of k come out of that number, not of the unrounded one.
 * Source: IEC 60364-5-54:2011, annex A, table A.54.1 (from memory). Melting points: usual reference figures.
 */
export type ConductorMetal = 'copper' | 'aluminium' | 'steel' | 'lead';

export interface AdiabaticConstants {
  /** Constant K as printed, A√s/mm². */
  readonly printed: number;
  /** Reciprocal of the temperature coefficient of resistivity at 0 °C, °C. */
  readonly beta: number;
  /** Melting point, °C. */
  readonly melts: number;
}

export const adiabaticConstants: Readonly<Record<ConductorMetal, AdiabaticConstants>> = {
  copper: { printed: 226, beta: 234.5, melts: 1083 },
  aluminium: { printed: 148, beta: 228, melts: 658 },
  steel: { printed: 78, beta: 202, melts: 1400 },
  lead: { printed: 41, beta: 230, melts: 327 },
};
