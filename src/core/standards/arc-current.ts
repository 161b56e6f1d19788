import type { Electrodes } from './arc-electrodes';

/** Coefficients k1, k2, k3 of the power of ten, and k4 to k10 of the polynomial, highest power of the bolted current first. */
export interface ArcCurrentCoefficients {
  readonly powerOfTen: readonly [k1: number, k2: number, k3: number];
  readonly polynomial: readonly number[];
}

/**
 * Arcing current at 600 V, kA, from bolted fault current, kA, and gap, mm.
 * Source: IEEE 1584-2018, table 1, the 600 V rows (two public copies that agree, save one exponent of VOA; number of the table from memory).
 */
export const arcCurrentCoefficients: Readonly<Record<Electrodes, ArcCurrentCoefficients>> = {
  VCB: { powerOfTen: [-0.04287, 1.035, -0.083], polynomial: [0, 0, -4.783e-9, 1.962e-6, -0.000229, 0.003141, 1.092] },
  VCBB: { powerOfTen: [-0.017432, 0.98, -0.05], polynomial: [0, 0, -5.767e-9, 2.524e-6, -0.00034, 0.01187, 1.013] },
  HCB: { powerOfTen: [0.054922, 0.988, -0.11], polynomial: [0, 0, -5.382e-9, 2.316e-6, -0.000302, 0.0091, 0.9725] },
  VOA: { powerOfTen: [0.043785, 1.04, -0.18], polynomial: [0, 0, -4.783e-9, 1.962e-6, -0.000229, 0.003141, 1.092] },
  HOA: { powerOfTen: [0.111147, 1.008, -0.24], polynomial: [0, 0, -3.895e-9, 1.641e-6, -0.000197, 0.002615, 1.1] },
};
