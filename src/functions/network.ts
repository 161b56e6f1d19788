import { family } from './kernel/declaration';

export const network = family('network', []);
