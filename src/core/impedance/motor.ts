import type { Complex } from '../complex';
import { type Working, silent } from '../working';
import { ofSize } from './supply';

/**
 * Rated current of a group of motors.
 * @param power       shaft power, kW
 * @param pf          power factor at rated load
 * @param efficiency  efficiency at rated load
 * @param volts       rated line voltage, V
 * @returns A
 */
export function motorRatedCurrent(power: number, pf: number, efficiency: number, volts: number, work: Working = silent): number {
  const current = (1000 * power) / (Math.sqrt(3) * volts * pf * efficiency);
  work.step('I_rM', 'P/(√3·U·cos φ·η)', { P: [power, 'kW'], U: [volts, 'V'], 'cos φ': pf, η: efficiency }, [current, 'A']);
  return current;
}

/**
 * Impedance of a group of running asynchronous motors.
 * Source: IEC 60909-0:2016, 6.10 and 11; low-voltage groups with R/X 0.42.
 * @param ratedCurrent  A
 * @param volts         rated line voltage, V
 * @param lockedRatio   locked-rotor current over rated current
 * @param rOverX        R/X of the group
 * @returns mΩ
 */
export function motorImpedance(ratedCurrent: number, volts: number, lockedRatio: number, rOverX: number, work: Working = silent): Complex {
  const z = (1000 * volts) / (Math.sqrt(3) * lockedRatio * ratedCurrent);
  work.step('Z_M', 'U/(√3·(I_LR/I_rM)·I_rM)', { U: [volts, 'V'], 'I_LR/I_rM': lockedRatio, I_rM: [ratedCurrent, 'A'] }, [z, 'mΩ']);
  return ofSize(z, rOverX, work);
}
