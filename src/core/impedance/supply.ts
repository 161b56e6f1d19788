import { type Complex, complex } from '../complex';
import { type Working, silent } from '../working';

/** Splits the size of an impedance by its R/X: X = Z/√(1 + (R/X)²), R = (R/X)·X. */
export function ofSize(z: number, rOverX: number, work: Working = silent): Complex {
  const x = z / Math.sqrt(1 + rOverX ** 2);
  const result = complex(rOverX * x, x);
  work.step('Z', 'X = Z/√(1+(R/X)²), R = (R/X)·X', { Z: [z, 'mΩ'], 'R/X': rOverX }, [result, 'mΩ']);
  return result;
}

/**
 * Impedance of the supply network behind a stated fault level, at the voltage where the result is wanted.
 * Source: IEC 60909-0:2016, 6.2.
 * @param power   initial symmetrical short-circuit power, MVA
 * @param volts   line voltage of the side wanted, V
 * @param c       voltage factor that the power is stated with
 * @param rOverX  R/X of the network
 * @returns mΩ
 */
export function gridImpedance(power: number, volts: number, c: number, rOverX: number, work: Working = silent): Complex {
  const z = (1000 * c * volts ** 2) / (power * 1e6);
  work.step('Z_Q', 'c·Un²/S"kQ', { c, Un: [volts, 'V'], 'S"kQ': [power, 'MVA'] }, [z, 'mΩ']);
  return ofSize(z, rOverX, work);
}

/**
 * Impedance behind a fault current declared at the incoming terminals.
 * Source: IEC 60909-0:2016, 6.2.
 * @param current  declared three-phase fault current, kA
 * @param rOverX   R/X at the terminals
 * @param volts    nominal line voltage, V
 * @param c        voltage factor that the current is stated with
 * @returns mΩ
 */
export function declaredImpedance(current: number, rOverX: number, volts: number, c: number, work: Working = silent): Complex {
  const z = (c * volts) / (Math.sqrt(3) * current);
  work.step('Z_Q', 'c·Un/(√3·I"kQ)', { c, Un: [volts, 'V'], 'I"kQ': [current, 'kA'] }, [z, 'mΩ']);
  return ofSize(z, rOverX, work);
}
