/** Outcome of one test against one requirement. */
export interface Judgement {
  verdict: 'pass' | 'FAIL' | 'not shown';
  /** (allowed/duty − 1)·100, or the equivalent, per cent; undefined where no figure can be worked. */
  marginPct?: number;
  /** Why the verdict is not shown. */
  reason?: string;
}

/** A limit is met to 1 part in 10⁹, so that rounding never turns an equality into a failure. */
export const SLACK = 1e-9;

export const atMost = (value: number, limit: number): boolean => value <= limit + Math.abs(limit) * SLACK;
export const atLeast = (value: number, limit: number): boolean => value >= limit - Math.abs(limit) * SLACK;
/** Two figures that differ by no more than rounding. */
export const nearly = (a: number, b: number): boolean => Math.abs(a - b) <= SLACK * Math.max(Math.abs(a), Math.abs(b));

/** Margin of a duty against what is allowed, per cent. */
export const marginPct = (allowed: number, duty: number): number => (allowed / duty - 1) * 100;

/** Duty at most the allowed value. */
export const judged = (duty: number, allowed: number): Judgement => ({
  verdict: atMost(duty, allowed) ? 'pass' : 'FAIL',
  marginPct: marginPct(allowed, duty),
});

/** The test cannot be made with what is known; a margin may still stand. */
export const notShown = (reason: string, margin?: number): Judgement => ({ verdict: 'not shown', reason, marginPct: margin });
