import { type Judgement, judged } from '../judgement';
import { type Working, silent } from '../working';

/**
 * Heat of one or more poles. Source: I²R.
 * @param current    current, A
 * @param resistance of one pole, mΩ; from a millivolt reading, mV/A = mΩ
 * @returns power, W
 */
export function poleHeat(current: number, resistance: number, poles: number, work: Working = silent): number {
  const heat = (poles * current ** 2 * resistance) / 1000;
  work.step('P', 'n·I²·R', { n: poles, I: [current, 'A'], R: [resistance, 'mΩ'] }, [heat, 'W']);
  return heat;
}

/**
 * Whether the resistance of a pole has risen too far since it was new. Source: practice; the maker's limit rules.
 * An indicator: it says nothing about breaking capacity or insulation.
 * @param drop      voltage drop, mV
 * @param current   at that drop, A
 * @param reference resistance when new, mΩ
 * @param ratio     greatest resistance allowed, in multiples of the reference
 */
export function poleResistanceRise(drop: number, current: number, reference: number, ratio: number, work: Working = silent): Judgement {
  const resistance = drop / current;
  const allowed = ratio * reference;
  work.step('R', 'U/I', { U: [drop, 'mV'], I: [current, 'A'] }, [resistance, 'mΩ']);
  work.step('R allowed', 'ratio·R new', { ratio, 'R new': [reference, 'mΩ'] }, [allowed, 'mΩ']);
  return judged(resistance, allowed);
}

/**
 * Whether the highest of three poles lies within a per cent of the lowest. Source: common practice of test guides.
 * An indicator: it says nothing about breaking capacity or insulation.
 * @param poles    resistances, mΩ
 * @param limitPct how far the highest may lie above the lowest, %
 */
export function poleSpread(poles: readonly number[], limitPct: number, work: Working = silent): Judgement {
  const [lowest, highest] = [Math.min(...poles), Math.max(...poles)];
  const allowed = lowest * (1 + limitPct / 100);
  work.step('spread', '100·(R highest/R lowest − 1)', { 'R highest': [highest, 'mΩ'], 'R lowest': [lowest, 'mΩ'] }, [100 * (highest / lowest - 1), '%']);
  work.step('R allowed', 'R lowest·(1 + limit)', { 'R lowest': [lowest, 'mΩ'], limit: [limitPct, '%'] }, [allowed, 'mΩ']);
  return judged(highest, allowed);
}
