import { type Complex, complex } from '../complex';
import { sineOf } from '../power-factor';
import { type Working, silent } from '../working';

export interface GeneratorPlate {
  /** Rated power, kVA. */
  rating: number;
  /** Subtransient reactance, %. */
  xd2: number;
  /** Rated voltage, taken as the nominal one, V. */
  volts: number;
  /** Fictitious resistance over X"d; 0.15 for machines up to 1 kV. */
  rOverX: number;
  /** Rated power factor. */
  pf: number;
}

/**
 * Impedance of a low-voltage synchronous generator in the first cycles of a fault.
 * Source: IEC 60909-0:2016, 6.6.1.
 * @param plate      what the plate says
 * @param c          voltage factor of the greatest fault
 * @param corrected  apply K_G
 * @returns mΩ
 */
export function generatorImpedance(plate: GeneratorPlate, c: number, corrected: boolean, work: Working = silent): Complex {
  const { rating, xd2, volts, rOverX, pf } = plate;
  const base = volts ** 2 / rating;
  const x = xd2 / 100;
  work.step('Zb', 'Ur²/Sr', { Ur: [volts, 'V'], Sr: [rating, 'kVA'] }, [base, 'mΩ']);
  const sine = sineOf(pf);
  const factor = corrected ? c / (1 + x * sine) : 1;
  if (corrected) work.step('K_G', 'c/(1+x"d·sin φ)', { c, 'x"d': x, 'sin φ': sine }, factor);
  const result = complex(factor * rOverX * x * base, factor * x * base);
  work.step('Z_G', 'K_G·(R_G + j·X"d)', { K_G: factor, 'R_G/X"d': rOverX, 'X"d': [x * base, 'mΩ'] }, [result, 'mΩ']);
  return result;
}
