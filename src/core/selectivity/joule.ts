import { type Judgement, judged, notShown } from '../judgement';
import { sameLevel } from '../same-level';
import { fuseJouleLimits } from '../standards/fuse-joule';
import { type Working, silent } from '../working';

/**
 * Joule comparison: does the minor device finish before the major begins to melt?
 * Source: IEC 60269-2 and -5 (from memory).
 * @param totalMinor  total (pre-arcing and arcing) joule integral of the minor device, A²s
 * @param prearcMajor pre-arcing joule integral of the major device, A²s
 * @param minorLevel  prospective current at which the first was read, kA
 * @param majorLevel  prospective current at which the second was read, kA, within 1 % of the first
 * @param reservePct  reserve on the total, %, 0 or more
 */
export function judgeJoule(totalMinor: number, prearcMajor: number, minorLevel: number, majorLevel: number, reservePct: number, work: Working = silent): Judgement {
  if (!sameLevel(minorLevel, majorLevel)) return notShown(`read at two fault levels: minor at ${minorLevel} kA, major at ${majorLevel} kA`);
  const duty = totalMinor * (1 + reservePct / 100);
  const shared = { total: [totalMinor, 'A²s'], 'pre-arcing': [prearcMajor, 'A²s'] } as const;
  work.step('share', '100·total/pre-arcing', shared, [(100 * totalMinor) / prearcMajor, '%']);
  const judgement = judged(duty, prearcMajor);
  work.step('margin', '(pre-arcing/(total·(1 + reserve)) − 1)·100', { ...shared, reserve: [reservePct, '%'] }, [judgement.marginPct!, '%']);
  return judgement;
}

/**
 * Rating of the gG link whose pre-arcing limit a joule integral is, to the digit; undefined for any other figure.
 * Such a figure given as a total is most likely a pre-arcing figure in the wrong place.
 */
export function prearcingLimitOf(joule: number): number | undefined {
  for (const [rated, { least, greatest }] of fuseJouleLimits) if (joule === least || joule === greatest) return rated;
  return undefined;
}
