import type { Metal } from './conductor-resistance';

/**
 * Constants of the non-adiabatic factor of conductors, insulation up to 3 kV: X in √(mm²/s), Y in mm²/s.
 * Source: IEC 60949:1988, clause 5 (from memory).
 */
export type NonAdiabaticInsulation = 'PVC' | 'XLPE' | 'EPR';

export interface HeatLossConstants {
  readonly x: number;
  readonly y: number;
}

export const heatLossConstants: Readonly<Record<NonAdiabaticInsulation, Readonly<Record<Metal, HeatLossConstants>>>> = {
  PVC: { copper: { x: 0.29, y: 0.06 }, aluminium: { x: 0.4, y: 0.08 } },
  XLPE: { copper: { x: 0.41, y: 0.12 }, aluminium: { x: 0.57, y: 0.16 } },
  EPR: { copper: { x: 0.38, y: 0.1 }, aluminium: { x: 0.52, y: 0.14 } },
};
