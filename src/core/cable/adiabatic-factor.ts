import { figure } from '../figure';
import { atMost } from '../judgement';
import { outOfRange } from '../refusal';
import { type ConductorMetal, adiabaticConstants } from '../standards/adiabatic-constants';
import { type Working, silent } from '../working';

/** Temperatures before and after a fault, °C. */
export interface TemperatureSpan {
  readonly start: number;
  readonly end: number;
}

/**
 * Adiabatic factor k of a conductor between two temperatures, with the constants as the standard prints them.
 * Source: IEC 60364-5-54:2011, annex A.
 * @param metal metal of the conductor
 * @param span  temperature before the fault and at its end, °C, the end above the start
 * @returns k, A√s/mm²
 */
export function adiabaticFactor(metal: ConductorMetal, { start, end }: TemperatureSpan, work: Working = silent): number {
  const { printed: constant, beta } = adiabaticConstants[metal];
  const k = constant * Math.sqrt(Math.log((beta + end) / (beta + start)));
  work.step('k', 'K·√(ln((β + θf)/(β + θi)))', { K: [constant, 'A√s/mm²'], β: [beta, '°C'], θi: [start, '°C'], θf: [end, '°C'] }, [k, 'A√s/mm²']);
  return k;
}

/**
 * k as people use it: with the temperatures of the standard the whole number that its tables print, with a temperature of
 * their own unrounded.
 * @param usual temperatures of the standard for this conductor, its end being the limit
 * @param own   temperatures given instead, °C
 * @param where what the limit belongs to, in words
 */
export function factorForTemperatures(metal: ConductorMetal, usual: TemperatureSpan, own: Partial<TemperatureSpan>, where: string, work: Working = silent): number {
  const { start = usual.start, end = usual.end } = own;
  if (!atMost(end, usual.end)) throw outOfRange('end_C', `${figure(end)} °C is above the limit of ${where}, ${figure(usual.end)} °C`);
  if (!(end > start)) {
    if (own.end === undefined) throw outOfRange('start_C', `${figure(start)} °C is not below the end, ${figure(end)} °C`);
    throw outOfRange('end_C', `${figure(end)} °C is not above the start, ${figure(start)} °C`);
  }
  const k = adiabaticFactor(metal, { start, end }, work);
  if (own.start !== undefined || own.end !== undefined) return k;
  const tabulated = Math.round(k);
  work.step('k', 'as the tables print it', { k: [k, 'A√s/mm²'] }, [tabulated, 'A√s/mm²']);
  return tabulated;
}
