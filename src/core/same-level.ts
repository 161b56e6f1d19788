import { atMost } from './judgement';

/** Figures of let-through compare only where they were read at one prospective current; sheets are read to about this ratio. */
const LEVEL_RATIO = 1.01;

/** Two fault levels that count as one: the greater exceeds the lesser by 1 % at most. Any unit, both alike. */
export const sameLevel = (a: number, b: number): boolean => atMost(Math.max(a, b), LEVEL_RATIO * Math.min(a, b));
