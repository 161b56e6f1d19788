import { type Complex, complex } from '../complex';
import { missing, outOfRange, wrongValue } from '../refusal';
import { type Working, silent } from '../working';

const GROUP = /^(d|yn?|zn?)(d|yn?|zn?)(\d{1,2})?$/;

/** Windings of a vector group such as Dyn11, in any case, with or without its clock number from 0 to 11. */
function windingsOf(text: string): { high: string; low: string } {
  const match = GROUP.exec(text.replace(/\s/g, '').toLowerCase());
  if (!match || Number(match[3] ?? 0) > 11) {
    throw wrongValue('group', `got "${text.slice(0, 40)}", takes a vector group such as Dyn11, Dzn0, Yzn5 or YNyn, clock number 0 to 11 or none`);
  }
  return { high: match[1]!, low: match[2]! };
}

/**
 * Zero-sequence impedance of a transformer at its low-voltage side, from its positive-sequence impedance.
 * Source: IEC 60909-0:2016, 6.3.
 * @param z         positive-sequence impedance, mΩ
 * @param group     vector group as written on the plate
 * @param r0OverR1  R0/R1; left out, 1 for Dyn and refused for every other group
 * @param x0OverX1  X0/X1; as r0OverR1
 * @returns mΩ; refused where the low-voltage side brings out no star point
 */
export function transformerZeroImpedance(z: Complex, group: string, r0OverR1: number | undefined, x0OverX1: number | undefined, work: Working = silent): Complex {
  const { high, low } = windingsOf(group);
  if (!low.endsWith('n')) throw outOfRange('group', `${group} brings out no star point, so there is no zero-sequence path`);
  const deltaStar = high === 'd' && low === 'yn';
  const ratio = (given: number | undefined, name: string): number => {
    if (given !== undefined) return given;
    if (deltaStar) return 1;
    throw missing(name);
  };
  const r = ratio(r0OverR1, 'r0_over_r1');
  const x = ratio(x0OverX1, 'x0_over_x1');
  const result = complex(r * z.re, x * z.im);
  work.step('Z0', '(R0/R1)·R1 + j·(X0/X1)·X1', { Z1: [z, 'mΩ'], 'R0/R1': r, 'X0/X1': x }, [result, 'mΩ']);
  return result;
}
