import { type BandLimit, type MiniatureType, miniatureBands } from '../standards/miniature-bands';
import { type Working, silent } from '../working';

/**
 * Instantaneous band of a miniature circuit-breaker: the current up to which it holds, or from which it trips at once.
 * Source: IEC 60898-1:2015, table 2 (from memory).
 * @param rated rated current, A, up to 125
 * @returns current, A
 */
export function miniatureBand(rated: number, type: MiniatureType, limit: BandLimit, work: Working = silent): number {
  const multiple = miniatureBands[type][limit];
  const current = multiple * rated;
  work.step(`I ${limit}`, `${multiple}·In`, { In: [rated, 'A'], type }, [current, 'A']);
  return current;
}
