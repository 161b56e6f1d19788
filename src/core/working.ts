import type { Complex } from './complex';
import type { Unit } from './units';

export type Figure = number | Complex | string;
/** A figure with its unit, or a bare ratio. */
export type Stated = Figure | readonly [Figure, Unit];

export interface Step {
  /** Symbol of the quantity found, as the standard writes it. */
  symbol: string;
  /** How it was found, in symbols. */
  formula: string;
  inputs: Readonly<Record<string, Stated>>;
  result: Stated;
}

/** Takes down the steps of a calculation. Formulas call it; who wants to see the working hands in a recorder. */
export interface Working {
  step(symbol: string, formula: string, inputs: Readonly<Record<string, Stated>>, result: Stated): void;
}

/** Nobody asked to see the working. */
export const silent: Working = { step: () => undefined };

export class Recorder implements Working {
  readonly steps: Step[] = [];
  step(symbol: string, formula: string, inputs: Readonly<Record<string, Stated>>, result: Stated): void {
    this.steps.push({ symbol, formula, inputs, result });
  }
}
