import { missing, outOfRange } from '../refusal';
import type { ConductorMetal } from '../standards/adiabatic-constants';
import { type BarePlace, type SheathedInsulation, SURROUNDINGS, armourTemperatures, bareLimits } from '../standards/earth-conductor-temperatures';
import { shortCircuitLimit } from '../standards/insulation-temperatures';
import { type Working, silent } from '../working';
import { type TemperatureSpan, factorForTemperatures } from './adiabatic-factor';
import { temperaturesInCable } from './line-conductor-k';

export type EarthPlace = 'in cable' | 'separate' | 'armour' | BarePlace;

const isBare = (where: EarthPlace): where is BarePlace => where.startsWith('bare');

function temperatures(metal: ConductorMetal, where: EarthPlace, insulation: SheathedInsulation | undefined, csa: number | undefined): TemperatureSpan {
  if (metal === 'lead' && where !== 'armour') throw outOfRange('metal', 'lead is an earth conductor only as armour (sheath)');
  if (isBare(where)) return { start: SURROUNDINGS, end: bareLimits[where][metal as Exclude<ConductorMetal, 'lead'>] };
  if (insulation === undefined) throw missing('insulation');
  if (where === 'armour') return { start: armourTemperatures[insulation].start, end: armourTemperatures[insulation].limit };
  if (where === 'separate') return { start: SURROUNDINGS, end: shortCircuitLimit(insulation, csa) };
  return temperaturesInCable(insulation, csa);
}

/**
 * Adiabatic factor k of an earth conductor: a core of the cable, separate, the armour, or bare.
 * Source: IEC 60364-5-54:2011, tables A.54.2 to A.54.6 (from memory).
 * @param insulation of the conductor, or of the cores inside the armour; bare conductors need none
 * @param csa        cross-section, mm²; left out: up to 300 mm²
 * @param own        temperatures given instead of the standard's, °C
 * @returns k, A√s/mm²; the whole number of the tables where no temperature was given
 */
export function earthConductorFactor(
  metal: ConductorMetal, where: EarthPlace, insulation: SheathedInsulation | undefined, csa: number | undefined, own: Partial<TemperatureSpan>, work: Working = silent,
): number {
  const usual = temperatures(metal, where, insulation, csa);
  return factorForTemperatures(metal, usual, own, isBare(where) ? where : `${insulation} ${where}`, work);
}
