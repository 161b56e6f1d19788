import { figure } from '../figure';
import { outOfRange } from '../refusal';
import { type ConductorMetal, adiabaticConstants } from '../standards/adiabatic-constants';
import { type Working, silent } from '../working';

/**
 * Conductor temperature after a fault, no heat leaving: the inverse of the adiabatic factor, with the same printed constant.
 * Source: IEC 60364-5-54:2011, annex A.
 * @param joule joule integral of the fault, A²s
 * @param csa   conductor cross-section, mm²
 * @param start temperature before the fault, °C
 * @param runs  conductors in parallel that share evenly
 * @returns temperature, °C, up to the melting point of the metal
 */
export function finalTemperature(joule: number, csa: number, start: number, metal: ConductorMetal, runs: number, work: Working = silent): number {
  const { printed: constant, beta, melts } = adiabaticConstants[metal];
  const end = (beta + start) * Math.exp(joule / (constant * csa * runs) ** 2) - beta;
  if (!(end <= melts)) throw outOfRange('joule_A2s', `${figure(joule)} A²s would take the conductor above ${figure(melts)} °C, where ${metal} melts`);
  const inputs = { β: [beta, '°C'], θi: [start, '°C'], 'I²t': [joule, 'A²s'], S: [csa, 'mm²'], n: runs, K: [constant, 'A√s/mm²'] } as const;
  work.step('θf', '(β + θi)·e^(I²t/(K·S·n)²) − β', inputs, [end, '°C']);
  return end;
}
