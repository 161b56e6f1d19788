import { family } from './kernel/declaration';

export const hazard = family('hazard', []);
