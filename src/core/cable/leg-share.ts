import { type Complex, complex } from '../complex';
import { figure } from '../figure';
import { outOfRange } from '../refusal';
import { type Working, silent } from '../working';

/**
 * Current in one of several unequal cables in parallel.
 * Source: IEC 60364-4-43:2023, 433.4 (from memory).
 * @param legs    impedance of each leg, mΩ
 * @param current of all the legs together, A
 * @param leg     which one, from 1
 * @returns current of that leg, A
 */
export function legShare(legs: readonly Complex[], current: number, leg: number, work: Working = silent): number {
  const own = legs[leg - 1];
  if (own === undefined) throw outOfRange('leg', `${figure(leg)} is above the number of legs, ${legs.length}`);
  const dead = legs.findIndex((z) => !(z.abs() > 0));
  if (dead >= 0) throw outOfRange('z_legs_mohm', `leg ${dead + 1} is 0 mΩ: no share can be worked`);
  const parallel = legs.reduce((sum, z) => sum.add(z.inverse()), complex(0, 0)).inverse();
  const share = current * parallel.div(own).abs();
  work.step('Zp', '1/Σ(1/Z)', Object.fromEntries(legs.map((z, i) => [`Z${i + 1}`, [z, 'mΩ'] as const])), [parallel, 'mΩ']);
  work.step('I leg', 'I·|Zp/Z|', { I: [current, 'A'], Zp: [parallel, 'mΩ'], Z: [own, 'mΩ'] }, [share, 'A']);
  return share;
}
