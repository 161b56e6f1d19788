import { type Working, silent } from '../working';

/**
 * Greatest earth-fault loop impedance at which a device still trips in time.
 * Source: IEC 60364-4-41:2005+A1:2017, 411.4.4; cold reading: IEC 60364-6 (from memory).
 * @param trip       current that surely trips the device in time, A
 * @param u0         line to earth, V
 * @param c          voltage factor of the least fault
 * @param coldFactor below 1 for a limit to hold a cold reading against
 * @returns loop impedance, mΩ
 */
export function greatestLoop(trip: number, u0: number, c: number, coldFactor: number, work: Working = silent): number {
  const loop = ((1000 * c * u0) / trip) * coldFactor;
  work.step('Zs', 'c·U0/Ia·f', { c, U0: [u0, 'V'], Ia: [trip, 'A'], f: coldFactor }, [loop, 'mΩ']);
  return loop;
}
