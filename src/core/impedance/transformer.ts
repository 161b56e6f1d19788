import { type Complex, complex } from '../complex';
import { rounded } from '../figure';
import { outOfRange } from '../refusal';
import { type Working, silent } from '../working';

export interface TransformerPlate {
  /** Rated power, kVA. */
  rating: number;
  /** Rated short-circuit voltage, %. */
  uk: number;
  /** Load loss at rated current, kW. */
  loss: number;
  /** Rated no-load voltage of the side wanted, V. */
  volts: number;
}

/** X = √(Z² − R²), mΩ; refused where the loss leaves no reactance. */
function reactance(z: number, r: number): number {
  if (!(r < z)) throw outOfRange('loss_kW', `R ${rounded(r)} mΩ is at or above Z ${rounded(z)} mΩ`);
  return Math.sqrt(z ** 2 - r ** 2);
}

/**
 * Impedance of a two-winding transformer from its plate.
 * Source: IEC 60909-0:2016, 6.3.1; correction factor K_T: 6.3.3.
 * @param plate         rating, short-circuit voltage, load loss and rated voltage
 * @param c             voltage factor of the greatest fault, for K_T
 * @param corrected     apply K_T, as the greatest fault asks
 * @param tolerancePct  departure of uk from its nominal value, %; K_T keeps to the nominal one
 * @returns mΩ; refused where R is at or above Z
 */
export function transformerImpedance(plate: TransformerPlate, c: number, corrected: boolean, tolerancePct: number, work: Working = silent): Complex {
  const { rating, uk, loss, volts } = plate;
  const base = volts ** 2 / rating;
  const r = (loss / rating) * base;
  const nominal = (uk / 100) * base;
  const z = nominal * (1 + tolerancePct / 100);
  work.step('Zb', 'Ur²/Sr', { Ur: [volts, 'V'], Sr: [rating, 'kVA'] }, [base, 'mΩ']);
  work.step('R_T', '(Pk/Sr)·Zb', { Pk: [loss, 'kW'], Sr: [rating, 'kVA'], Zb: [base, 'mΩ'] }, [r, 'mΩ']);
  work.step('Z_T', '(uk/100)·(1+tol/100)·Zb', { uk: [uk, '%'], tol: [tolerancePct, '%'], Zb: [base, 'mΩ'] }, [z, 'mΩ']);
  const x = reactance(z, r);
  work.step('X_T', '√(Z_T²−R_T²)', { Z_T: [z, 'mΩ'], R_T: [r, 'mΩ'] }, [x, 'mΩ']);
  if (!corrected) return complex(r, x);
  const factor = correctionFactor(reactance(nominal, r) / base, c, work);
  return complex(factor * r, factor * x);
}

/** K_T = 0.95·c/(1 + 0.6·x_T) with x_T the relative reactance. Source: IEC 60909-0:2016, 6.3.3. */
function correctionFactor(xT: number, c: number, work: Working): number {
  const factor = (0.95 * c) / (1 + 0.6 * xT);
  work.step('K_T', '0.95·c/(1+0.6·x_T)', { c, x_T: xT }, factor);
  return factor;
}
