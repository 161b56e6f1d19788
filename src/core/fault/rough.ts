import { type Working, silent } from '../working';

/**
 * Rough three-phase fault current at a transformer's terminals, from its plate alone.
 * @param rating  kVA
 * @param uk      short-circuit voltage, %
 * @param volts   rated line voltage, V
 * @returns kA
 */
export function faultFromRating(rating: number, uk: number, volts: number, work: Working = silent): number {
  const current = rating / ((Math.sqrt(3) * volts * uk) / 100); // kVA/V = kA
  work.step('Ik', 'Sr/(√3·Ur·uk/100)', { Sr: [rating, 'kVA'], Ur: [volts, 'V'], uk: [uk, '%'] }, [current, 'kA']);
  return current;
}

/**
 * Rated current of the running motors as a per cent of the fault current without them: over 1 % they must be counted.
 * Source: IEC 60909-0:2016, 6.10 and 11.
 * @param ratedCurrent  A
 * @param fault         kA
 * @returns %
 */
export function motorShare(ratedCurrent: number, fault: number, work: Working = silent): number {
  const share = (100 * ratedCurrent) / (1000 * fault);
  work.step('share', '100·I_rM/Ik"', { I_rM: [ratedCurrent, 'A'], 'Ik"': [fault, 'kA'] }, [share, '%']);
  return share;
}
