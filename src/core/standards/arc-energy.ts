import type { Electrodes } from './arc-electrodes';

/** Coefficients k1 to k13 of the exponent of the arc energy. */
export interface ArcEnergyCoefficients {
  readonly k1: number;
  /** Of lg gap. */
  readonly k2: number;
  /** Of I600 over the polynomial in the bolted current. */
  readonly k3: number;
  /** k4 to k10, highest power (7) of the bolted current first; its constant term is 0. */
  readonly polynomial: readonly number[];
  /** Of lg bolted current. */
  readonly k11: number;
  /** Of lg distance. */
  readonly k12: number;
  /** Of lg arcing current. */
  readonly k13: number;
}

/**
 * Arc energy at or below 600 V, J/cm², from currents in kA, gap and distance in mm, time in ms.
 * Source: IEEE 1584-2018, table 3, the 600 V rows (two public copies that agree, save one exponent of VOA; number of the table from memory).
 */
export const arcEnergyCoefficients: Readonly<Record<Electrodes, ArcEnergyCoefficients>> = {
  VCB: { k1: 0.753364, k2: 0.566, k3: 1.752636, polynomial: [0, 0, -4.783e-9, 1.962e-6, -0.000229, 0.003141, 1.092, 0], k11: 0, k12: -1.598, k13: 0.957 },
  VCBB: { k1: 3.068459, k2: 0.26, k3: -0.098107, polynomial: [0, 0, -5.767e-9, 2.524e-6, -0.00034, 0.01187, 1.013, 0], k11: -0.06, k12: -1.809, k13: 1.19 },
  HCB: { k1: 4.073745, k2: 0.344, k3: -0.370259, polynomial: [0, 0, -5.382e-9, 2.316e-6, -0.000302, 0.0091, 0.9725, 0], k11: 0, k12: -2.03, k13: 1.036 },
  VOA: { k1: 0.679294, k2: 0.746, k3: 1.222636, polynomial: [0, 0, -4.783e-9, 1.962e-6, -0.000229, 0.003141, 1.092, 0], k11: 0, k12: -1.598, k13: 0.997 },
  HOA: { k1: 3.470417, k2: 0.465, k3: -0.261863, polynomial: [0, 0, -3.895e-9, 1.641e-6, -0.000197, 0.002615, 1.1, 0], k11: 0, k12: -1.99, k13: 1.04 },
};

/** 1.2 cal/cm², the onset of a second-degree burn, at 4.184 J a calorie; J/cm². Source: IEEE 1584-2018, 4.7 (from memory). */
export const burnEnergy = 5.0208;

/** Least working distance of the model, mm. Source: IEEE 1584-2018, range of the model. */
export const leastDistance = 305;
