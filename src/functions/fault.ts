import { family } from './kernel/declaration';

export const fault = family('fault', []);
