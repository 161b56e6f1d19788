import { family } from './kernel/declaration';

export const impedance = family('impedance', []);
