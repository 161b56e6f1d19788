import type { Rule } from './rule';
import { rules } from './rules';
import { NOT_CHECKED, STORED_VALUE } from './stored-values';

/** What is looked for, for the record of a check. */
export const allRules: readonly Pick<Rule, 'kind' | 'class' | 'looksFor'>[] = [STORED_VALUE, NOT_CHECKED, ...rules];
