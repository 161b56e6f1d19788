import { family } from './kernel/declaration';

export const life = family('life', []);
