import { rounded } from '../figure';
import { nearly } from '../judgement';
import { outOfRange } from '../refusal';
import { type Working, silent } from '../working';
import { annuity } from './present-cost';

/** Two options, A and B, each with its fixed present cost and the cost of one fault. */
export interface TwoOptions {
  readonly fixedA: number;
  readonly fixedB: number;
  readonly faultA: number;
  readonly faultB: number;
}

/**
 * Faults a year at which options A and B cost the same. Negative: there is no such rate, one is cheaper at every rate.
 * Source: arithmetic.
 * @param ratePct interest a year, %
 * @param years   over which the options are compared
 */
export function breakEvenRate({ fixedA, fixedB, faultA, faultB }: TwoOptions, ratePct: number, years: number, work: Working = silent): number {
  if (nearly(faultA, faultB)) throw outOfRange(undefined, 'fault_cost_a and fault_cost_b are equal: no rate makes A and B equal');
  const a = annuity(ratePct, years, work);
  const rate = (fixedA - fixedB) / (a * (faultB - faultA));
  if (!Number.isFinite(rate)) throw outOfRange(undefined, 'the result is not a finite number');
  work.step('rate', '(fixed A − fixed B)/(a·(fault B − fault A))', { 'fixed A': fixedA, 'fixed B': fixedB, a, 'fault A': faultA, 'fault B': faultB }, rate);
  return rate;
}

const cheaper = (a: number, b: number): 'A' | 'B' => (a < b ? 'A' : 'B');

/** The break-even in words: which option is cheaper, and from what rate of faults. Source: arithmetic. */
export function breakEvenWords(options: TwoOptions, ratePct: number, years: number, work: Working = silent): string {
  const { fixedA, fixedB, faultA, faultB } = options;
  if (nearly(faultA, faultB)) return nearly(fixedA, fixedB) ? 'A and B cost the same' : `${cheaper(fixedA, fixedB)} is cheaper at every rate`;
  const rate = nearly(fixedA, fixedB) ? 0 : breakEvenRate(options, ratePct, years, work);
  const which = cheaper(faultA, faultB);
  return rate < 0 ? `${which} is cheaper at every rate` : `${which} is cheaper above ${rounded(rate)} faults a year`;
}
