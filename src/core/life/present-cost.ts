import { type Working, silent } from '../working';

/**
 * Present worth of 1 a year, paid at the end of each year. Source: arithmetic.
 * @param ratePct interest a year, %, from 0
 * @param years   above 0
 */
export function annuity(ratePct: number, years: number, work: Working = silent): number {
  const i = ratePct / 100;
  // expm1 and log1p keep their digits where the rate is all but nothing.
  const a = i === 0 ? years : -Math.expm1(-years * Math.log1p(i)) / i;
  work.step('a', i === 0 ? 'n' : '(1 − (1 + i)^−n)/i', { i, n: years }, a);
  return a;
}

/**
 * Present cost of a first cost and a yearly cost. Source: arithmetic.
 * @param annual yearly cost, paid at the end of each year
 */
export function presentCost(first: number, annual: number, ratePct: number, years: number, work: Working = silent): number {
  const a = annuity(ratePct, years, work);
  const cost = first + a * annual;
  work.step('present cost', 'first + a·yearly', { first, a, yearly: annual }, cost);
  return cost;
}
