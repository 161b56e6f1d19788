/** Value of a polynomial, highest power first. */
export const polynomial = (coefficients: readonly number[], x: number): number => coefficients.reduce((sum, k) => sum * x + k, 0);
