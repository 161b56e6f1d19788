/** sin φ of a power factor cos φ. One of 1 that came as 1 + 1e-12 must not turn into the root of a negative number. */
export const sineOf = (pf: number): number => Math.sqrt(Math.max(0, 1 - pf * pf));
