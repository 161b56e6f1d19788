import { family } from './kernel/declaration';

export const duty = family('duty', []);
