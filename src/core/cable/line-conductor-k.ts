import type { ConductorMetal } from '../standards/adiabatic-constants';
import { type Insulation, fullLoadTemperature, shortCircuitLimit } from '../standards/insulation-temperatures';
import { type Working, silent } from '../working';
import { type TemperatureSpan, factorForTemperatures } from './adiabatic-factor';

/** Temperatures of a conductor inside its cable: full load, and the limit of the insulation. */
export const temperaturesInCable = (insulation: Insulation, csa: number | undefined): TemperatureSpan => ({
  start: fullLoadTemperature(insulation),
  end: shortCircuitLimit(insulation, csa),
});

/**
 * Adiabatic factor k of a line conductor.
 * Source: IEC 60364-4-43:2023, table 43A; IEC 60364-5-54:2011, annex A.
 * @param csa cross-section, mm²; left out: up to 300 mm²
 * @param own temperatures given instead of the standard's, °C
 * @returns k, A√s/mm²; the whole number of the tables where no temperature was given
 */
export const lineConductorFactor = (metal: ConductorMetal, insulation: Insulation, csa: number | undefined, own: Partial<TemperatureSpan>, work: Working = silent): number =>
  factorForTemperatures(metal, temperaturesInCable(insulation, csa), own, insulation, work);
