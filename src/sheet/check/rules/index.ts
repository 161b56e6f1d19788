import type { Rule } from '../rule';

/** Every rule, in the order of the report. */
export const rules: readonly Rule[] = [];
