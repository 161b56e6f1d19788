import { atMost } from '../judgement';
import { missing } from '../refusal';
import { type Working, silent } from '../working';

/** Line conductors up to this size, mm², have an earth conductor of their own size; up to the next, of this size. */
const SAME_UP_TO = 16;
const SIXTEEN_UP_TO = 35;

/**
 * Earth conductor size by the table rule.
 * Source: IEC 60364-5-54:2011, 543.1.1, table 54.2.
 * @param csa    line conductor, mm²
 * @param lineK  adiabatic factor of the line conductor, A√s/mm², where the metals differ
 * @param earthK adiabatic factor of the earth conductor, A√s/mm², where the metals differ
 * @returns cross-section, mm², not rounded
 */
export function earthSizeByTable(csa: number, lineK: number | undefined, earthK: number | undefined, work: Working = silent): number {
  const [rule, base] = atMost(csa, SAME_UP_TO) ? ['S', csa] : atMost(csa, SIXTEEN_UP_TO) ? ['16 mm²', SAME_UP_TO] : ['S/2', csa / 2];
  work.step('S table', rule, { S: [csa, 'mm²'] }, [base, 'mm²']);
  if (lineK === undefined && earthK === undefined) return base;
  if (lineK === undefined) throw missing('line_k');
  if (earthK === undefined) throw missing('earth_k');
  const size = (base * lineK) / earthK;
  work.step('S earth', 'S table·k1/k2', { 'S table': [base, 'mm²'], k1: [lineK, 'A√s/mm²'], k2: [earthK, 'A√s/mm²'] }, [size, 'mm²']);
  return size;
}
