import { atMost } from '../judgement';
import { type Working, silent } from '../working';

/** Rating of a cable with four loaded conductors against three. */
const FOUR_LOADED = 0.86;

/**
 * Current of the neutral where the lines carry third harmonics, which add up in it.
 * Source: IEC 60364-5-52:2009, annex E (from memory).
 * @param load  line current, A
 * @param third third harmonic of the line current, %
 * @returns current, A
 */
export function neutralCurrent(load: number, third: number, work: Working = silent): number {
  const neutral = (3 * third * load) / 100;
  work.step('IN', '3·h3·Ib', { h3: [third, '%'], Ib: [load, 'A'] }, [neutral, 'A']);
  return neutral;
}

/**
 * Current to size a cable for, against the rating for three loaded conductors: by the line current up to 33 % of third
 * harmonic, by the neutral above; up to 45 % the fourth loaded conductor lowers the rating.
 * Source: IEC 60364-5-52:2009, annex E (from memory).
 */
export function sizingCurrent(load: number, third: number, work: Working = silent): number {
  const deciding = atMost(third, 33) ? load : neutralCurrent(load, third, work);
  const factor = !atMost(third, 15) && atMost(third, 45) ? FOUR_LOADED : 1;
  const current = deciding / factor;
  work.step('I', 'deciding current/factor', { 'deciding current': [deciding, 'A'], factor }, [current, 'A']);
  return current;
}
