import type { Electrodes } from './arc-electrodes';

/**
 * Variation of the arcing current: polynomial in the voltage between open terminals, kV, highest power (6) first; a ratio.
 * Source: IEEE 1584-2018, table 2 (two public copies that agree; number of the table from memory).
 */
export const arcVariationCoefficients: Readonly<Record<Electrodes, readonly number[]>> = {
  VCB: [0, -1.4269e-6, 8.3137e-5, -0.0019382, 0.022366, -0.12645, 0.30226],
  VCBB: [1.138e-6, -6.0287e-5, 0.0012758, -0.013778, 0.080217, -0.24066, 0.33524],
  HCB: [0, -3.097e-6, 1.6405e-4, -0.0033609, 0.033308, -0.16182, 0.34627],
  VOA: [9.5606e-7, -5.1543e-5, 0.0011161, -0.01242, 0.075125, -0.23584, 0.33696],
  HOA: [0, -3.1555e-6, 1.682e-4, -0.0034607, 0.034124, -0.1599, 0.34629],
};
