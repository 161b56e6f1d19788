import { figure } from '../core/figure';
import type { Caution } from './kernel/declaration';

/** Figures that are allowed, yet most likely typed in the wrong unit. */

const LEAST_CURRENT = 1;

/** No circuit that is worked out here carries so little: kiloamperes where amperes are asked. */
export const kiloamperesTyped = (name: string, amperes: number): Caution => amperes < LEAST_CURRENT && `${name} is ${figure(amperes)} A: kA typed for A?`;

const LEAST_TRIP = 5;
/** Rated residual currents, A: devices that trip at these, or at five times them, are the exception. */
const RESIDUAL = [0.006, 0.01, 0.03, 0.1, 0.3, 0.5, 1];
const isResidual = (amperes: number): boolean => RESIDUAL.some((rated) => [rated, 5 * rated].some((trip) => Math.abs(amperes - trip) < trip * 1e-6));

/** The least overcurrent device trips at 5 A: kiloamperes where the trip current is asked in amperes. */
export const kiloampereTripTyped = (name: string, amperes: number): Caution =>
  amperes < LEAST_TRIP && !isResidual(amperes) && `${name} is ${figure(amperes)} A: kA typed for A?`;

const GREATEST_FAULT = 200;

/** No low-voltage gear is rated above it: amperes where kiloamperes are asked. What passes 300 kA is refused by the limit. */
export const amperesTyped = (name: string, kiloamperes: number): Caution => kiloamperes > GREATEST_FAULT && `${name} is ${figure(kiloamperes)} kA: A typed for kA?`;

/**
 * A sheet hands a cell formatted as 10 % over as 0.1, which as a per cent is next to nothing: where a per cent is a reserve or a
 * tolerance, that is the unsafe side.
 */
export const fractionTyped = (name: string, percent: number): Caution =>
  percent !== 0 && Math.abs(percent) < 1 && `${name} is ${figure(percent)} %: a fraction typed for per cent?`;

/** Customary voltages between lines, V, that stand line to earth only in networks of 660 V and more. */
const BETWEEN_LINES = [380, 400, 415, 440, 480];

/** Voltage between lines where line to earth is asked: the fault current reads √3 times too high, and so does the loop that still trips. */
export const lineVoltsTyped = (name: string, volts: number): Caution =>
  BETWEEN_LINES.some((usual) => Math.abs(volts - usual) < usual * 1e-6) && `${name} is ${figure(volts)} V: between lines, where line to earth is asked?`;

const LEAST_LET_THROUGH = 1;

/** The smallest link lets through a few A²s: kA²s where A²s are asked, with which everything passes. */
export const kilojoulesTyped = (name: string, joule: number): Caution => joule < LEAST_LET_THROUGH && `${name} is ${figure(joule)} A²s: kA²s typed for A²s?`;
