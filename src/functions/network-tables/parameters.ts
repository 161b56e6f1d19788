import type { Complex } from '../../core/complex';
import type { FaultLevels } from '../../core/network/fault-levels';
import { flag, ratio, text, word } from '../kernel/kinds';

/** What the functions of the network family take and give in common. */

export const IEC_60909 = 'IEC 60909-0:2016';

export const c = () => ratio('voltage factor: 0.95 with hot impedances for the least case', { atLeast: 0.9, upTo: 1.1, default: 1.05 });
export const headers = () => flag('first row holds the headings', { default: true });
export const method = () => word('how the peak factor is found', { B: ['method b'], C: ['method c'] }, { default: 'C' });
export const node = (about: string) => text(about, {});

export const QUANTITIES = { Z: [], Ik3: ['ik', '3ph'], Ik2: ['2ph'], kappa: ['κ', 'peak factor'], ip: ['peak'] } as const;
export type Quantity = keyof typeof QUANTITIES | 'Ik1';
export const UNITS: Readonly<Record<Quantity, string>> = { Z: 'mΩ', Ik3: 'kA', Ik2: 'kA', kappa: '', ip: 'kA peak', Ik1: 'kA' };

export const levelCells = ({ z, ik3, ik2, kappa, ip }: FaultLevels): (number | Complex)[] => [z, ik3, ik2, kappa, ip];
export const levelOf = ({ z, ik3, ik2, kappa, ip }: FaultLevels, quantity: keyof typeof QUANTITIES): number | Complex => ({ Z: z, Ik3: ik3, Ik2: ik2, kappa, ip })[quantity];
