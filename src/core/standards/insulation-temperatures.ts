import { atMost } from '../judgement';

/**
 * Temperatures of an insulation, °C: of its conductor at full load, and its limit at the end of a short circuit. PVC, as
 * compounded for large conductors, has a lower limit above 300 mm².
 * Source: IEC 60364-4-43:2023, table 43A; IEC 60364-5-54:2011, tables A.54.2 and A.54.4 (from memory).
 */
export type Insulation = 'PVC' | 'PVC90' | 'XLPE' | 'EPR' | 'rubber60' | 'rubber85' | 'mineral' | 'mineral covered';

interface InsulationTemperatures {
  readonly fullLoad: number;
  readonly limit: number;
  /** Limit above 300 mm², where it differs. */
  readonly limitOfLargeSizes?: number;
}

const TABLE: Readonly<Record<Insulation, InsulationTemperatures>> = {
  PVC: { fullLoad: 70, limit: 160, limitOfLargeSizes: 140 },
  PVC90: { fullLoad: 90, limit: 160, limitOfLargeSizes: 140 },
  XLPE: { fullLoad: 90, limit: 250 },
  EPR: { fullLoad: 90, limit: 250 },
  rubber60: { fullLoad: 60, limit: 200 },
  rubber85: { fullLoad: 85, limit: 220 },
  mineral: { fullLoad: 105, limit: 250 },
  'mineral covered': { fullLoad: 70, limit: 160 },
};

const LARGE_ABOVE = 300;

/** Conductor temperature at full load, °C. */
export const fullLoadTemperature = (insulation: Insulation): number => TABLE[insulation].fullLoad;

/** Limit at the end of a short circuit, °C. @param csa cross-section, mm²; left out: up to 300 mm² */
export function shortCircuitLimit(insulation: Insulation, csa: number | undefined): number {
  const { limit, limitOfLargeSizes } = TABLE[insulation];
  return csa !== undefined && !atMost(csa, LARGE_ABOVE) ? (limitOfLargeSizes ?? limit) : limit;
}
