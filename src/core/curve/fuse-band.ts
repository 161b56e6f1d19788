import { outOfRange } from '../refusal';
import { type FuseGate, fuseGates } from '../standards/fuse-gates';
import { type FuseJouleLimit, fuseJouleLimits } from '../standards/fuse-joule';
import { type Working, silent } from '../working';

const unlisted = (rated: number): Error => outOfRange('rated_A', `${rated} is not among the rated currents of the table`);

/**
 * Gate current of a gG fuse-link: a limit of the standard, which the curve of any link keeps to.
 * Source: IEC 60269-1:2006+A2, table 3.
 * @param rated rated current, A, 16 to 1250 as listed there
 * @returns current, A
 */
export function fuseGateCurrent(rated: number, gate: FuseGate, work: Working = silent): number {
  const current = fuseGates.get(rated)?.[gate];
  if (current === undefined) throw unlisted(rated);
  work.step(`I ${gate}`, 'table 3', { In: [rated, 'A'] }, [current, 'A']);
  return current;
}

/**
 * Limit of the pre-arcing joule integral of a gG fuse-link at 0.01 s.
 * Source: IEC 60269-1:2006+A2, table 7.
 * @param rated rated current, A, 16 to 1250 as listed there
 * @returns joule integral, A²s
 */
export function fuseJouleLimit(rated: number, limit: FuseJouleLimit, work: Working = silent): number {
  const joule = fuseJouleLimits.get(rated)?.[limit];
  if (joule === undefined) throw unlisted(rated);
  work.step(`I²t ${limit}`, 'table 7, at 0.01 s', { In: [rated, 'A'] }, [joule, 'A²s']);
  return joule;
}
