import { family } from './kernel/declaration';

export const selectivity = family('selectivity', []);
