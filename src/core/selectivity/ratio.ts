import { type Judgement, SLACK, atLeast, marginPct, notShown } from '../judgement';
import { type Working, silent } from '../working';

/** Ratio of rated currents at which gG links of one range discriminate, by name. */
export const NOMINAL_STEP = 1.6;
/** Where the nominal step counts from: rated currents are rounded, and neighbours of the step such as 250/160 run from 1.5625. */
const NOMINAL_STEP_FROM = 1.56;

/** The ratio that is really asked for. */
const leastCounted = (leastRatio: number): number => (Math.abs(leastRatio - NOMINAL_STEP) <= NOMINAL_STEP * SLACK ? NOMINAL_STEP_FROM : leastRatio);

/**
 * Ratio of the rated currents of two devices.
 * @param major rated current of the device upstream, A
 * @param minor rated current of the device nearer the fault, A
 * @returns ratio
 */
export function ratingRatio(major: number, minor: number, work: Working = silent): number {
  const ratio = major / minor;
  work.step('ratio', 'In major/In minor', { 'In major': [major, 'A'], 'In minor': [minor, 'A'] }, ratio);
  return ratio;
}

const folded = (type: string): string => type.toLowerCase().replace(/\s+/g, ' ');

/**
 * Do two gG fuse-links of one range discriminate by the ratio of their ratings?
 * Source: IEC 60269-2 (gG, ratio 1.6 : 1; from memory).
 * @param major     rated current of the link upstream, A
 * @param minor     rated current of the link nearer the fault, A
 * @param majorType type and range, free text that begins gG
 * @param minorType must be alike, in any case
 * @param leastRatio ratio asked for; 1.6 counts from 1.56, any other stands as it is
 */
export function judgeRatio(major: number, minor: number, majorType: string, minorType: string, leastRatio: number, work: Working = silent): Judgement {
  if (folded(majorType) !== folded(minorType)) return notShown(`the ratio holds within one type only: "${majorType}" against "${minorType}"`);
  if (!folded(majorType).startsWith('gg')) return notShown(`the ratio holds for gG links only, not for ${majorType}`);
  const ratio = ratingRatio(major, minor, work);
  const least = leastCounted(leastRatio);
  const margin = marginPct(ratio, least);
  if (least !== leastRatio) work.step('least', `nominal step ${NOMINAL_STEP}, counts from`, {}, least);
  work.step('margin', '(ratio/least − 1)·100', { ratio, least }, [margin, '%']);
  return { verdict: atLeast(ratio, least) ? 'pass' : 'FAIL', marginPct: margin };
}
