import { cable } from './cable';
import { check } from './check';

/** Every family, in the order of help and handbook. */
export const families = [cable, check] as const;
