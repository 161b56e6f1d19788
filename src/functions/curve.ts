import { family } from './kernel/declaration';

export const curve = family('curve', []);
