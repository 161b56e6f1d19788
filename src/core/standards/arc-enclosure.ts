import type { BoxedElectrodes } from './arc-electrodes';

/**
 * Size correction of enclosures: quadratics in the equivalent size in inches, typical and shallow (there the inverse is taken).
 * Source: IEEE 1584-2018, table 7 (two public copies that agree; number of the table from memory).
 */
export const enclosureCoefficients: Readonly<Record<'typical' | 'shallow', Readonly<Record<BoxedElectrodes, readonly [b1: number, b2: number, b3: number]>>>> = {
  typical: {
    VCB: [-0.000302, 0.03441, 0.4325],
    VCBB: [-0.0002976, 0.032, 0.479],
    HCB: [-0.0001923, 0.01935, 0.6899],
  },
  shallow: {
    VCB: [0.002222, -0.02556, 0.6222],
    VCBB: [-0.002778, 0.1194, -0.2778],
    HCB: [-0.0005556, 0.03722, 0.4778],
  },
};

/** Constants A and B of the equivalent size of a wide enclosure. Source: IEEE 1584-2018, table 6 (two public copies that agree; number of the table from memory). */
export const equivalentSizeConstants: Readonly<Record<BoxedElectrodes, { readonly a: number; readonly b: number }>> = {
  VCB: { a: 4, b: 20 },
  VCBB: { a: 10, b: 24 },
  HCB: { a: 10, b: 22 },
};

/** Sizes at which the equivalent size changes its law, mm, and the depth of a shallow box. Source: IEEE 1584-2018, 4.8 (from memory). */
export const enclosureSizes = { small: 508, wide: 660.4, widest: 1244.6, shallowDepth: 203.2 } as const;

/** Equivalent size of a small dimension in a typical box, and cap on the height of VCB; inches. */
export const equivalentInches = { small: 20, tallest: 49 } as const;

/** Inches a millimetre, as the standard rounds it. */
export const inchesPerMillimetre = 0.03937;
