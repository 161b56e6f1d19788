import { type Complex, complex } from '../complex';
import { outOfRange } from '../refusal';
import { type Working, silent } from '../working';

/** Impedances in series, mΩ: Z = Σ z. Zero is allowed. */
export function inSeries(parts: readonly Complex[], work: Working = silent): Complex {
  const z = parts.reduce((sum, part) => sum.add(part), complex(0, 0));
  work.step('Z', 'Σ z', { n: parts.length }, [z, 'mΩ']);
  return z;
}

/** Impedances in parallel, mΩ: Z = 1/Σ(1/z). A zero is refused: it would short the others. */
export function inParallel(parts: readonly Complex[], work: Working = silent): Complex {
  let sum = complex(0, 0);
  parts.forEach((part, i) => {
    if (part.re === 0 && part.im === 0) throw outOfRange(`z_mohm ${i + 1}`, 'is zero, and would short the others');
    sum = sum.add(part.inverse());
  });
  const z = sum.inverse();
  work.step('Z', '1/Σ(1/z)', { n: parts.length }, [z, 'mΩ']);
  return z;
}

/**
 * Carries an impedance from one voltage to another, by the no-load ratio of the transformer between.
 * Source: IEC 60909-0:2016, 5.3.
 * @param z     mΩ at `from`
 * @param from  V
 * @param to    V
 * @returns mΩ at `to`
 */
export function referred(z: Complex, from: number, to: number, work: Working = silent): Complex {
  const square = (to / from) ** 2;
  const result = complex(z.re * square, z.im * square);
  work.step('Z', 'z·(U2/U1)²', { z: [z, 'mΩ'], U1: [from, 'V'], U2: [to, 'V'] }, [result, 'mΩ']);
  return result;
}
