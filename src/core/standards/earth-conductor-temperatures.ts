import type { ConductorMetal } from './adiabatic-constants';
import type { Insulation } from './insulation-temperatures';

/**
 * Temperatures of earth conductors that do not run inside the cable, °C.
 * Source: IEC 60364-5-54:2011, tables A.54.2 (separate), A.54.5 (armour) and A.54.6 (bare) (from memory).
 */

/** Before the fault, of a conductor that carries no load and lies apart: the surroundings. */
export const SURROUNDINGS = 30;

export type SheathedInsulation = Exclude<Insulation, 'mineral' | 'mineral covered'>;

/** Armour or sheath around cores of this insulation: start, and limit. */
export const armourTemperatures: Readonly<Record<SheathedInsulation, { readonly start: number; readonly limit: number }>> = {
  PVC: { start: 60, limit: 200 },
  PVC90: { start: 80, limit: 200 },
  XLPE: { start: 80, limit: 200 },
  EPR: { start: 80, limit: 200 },
  rubber60: { start: 55, limit: 200 },
  rubber85: { start: 75, limit: 220 },
};

export type BarePlace = 'bare' | 'bare restricted' | 'bare fire risk';

/** Limit of a bare conductor that touches nothing it could harm; visible and out of reach it may be hotter. Lead is not used bare. */
export const bareLimits: Readonly<Record<BarePlace, Readonly<Record<Exclude<ConductorMetal, 'lead'>, number>>>> = {
  bare: { copper: 200, aluminium: 200, steel: 200 },
  'bare restricted': { copper: 500, aluminium: 300, steel: 500 },
  'bare fire risk': { copper: 150, aluminium: 150, steel: 150 },
};
