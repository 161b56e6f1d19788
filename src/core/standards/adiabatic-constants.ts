/**
 * Constants of the adiabatic factor k, by metal. The standard prints the constant K as a whole number and its tables of k come
 * out of that number; the volumetric figures are those behind it.
 * Source: IEC 60364-5-54:2011, annex A, table A.54.1 (from memory). Melting points: usual reference figures.
 */
export type ConductorMetal = 'copper' | 'aluminium' | 'steel' | 'lead';

export interface AdiabaticConstants {
  /** Constant K = √(Qc·(β + 20)/ρ20) as printed, A√s/mm². */
  readonly printed: number;
  /** Volumetric heat capacity at 20 °C, J/(K·mm³). */
  readonly heatCapacity: number;
  /** Reciprocal of the temperature coefficient of resistivity at 0 °C, °C. */
  readonly beta: number;
  /** Resistivity at 20 °C, Ω·mm. */
  readonly resistivity: number;
  /** Melting point, °C. */
  readonly melts: number;
}

export const adiabaticConstants: Readonly<Record<ConductorMetal, AdiabaticConstants>> = {
  copper: { printed: 226, heatCapacity: 3.45e-3, beta: 234.5, resistivity: 17.241e-6, melts: 1083 },
  aluminium: { printed: 148, heatCapacity: 2.5e-3, beta: 228, resistivity: 28.264e-6, melts: 658 },
  steel: { printed: 78, heatCapacity: 3.8e-3, beta: 202, resistivity: 138e-6, melts: 1400 },
  lead: { printed: 41, heatCapacity: 1.45e-3, beta: 230, resistivity: 214e-6, melts: 327 },
};
