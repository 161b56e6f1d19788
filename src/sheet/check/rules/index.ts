import type { Rule } from '../rule';
import { constantOverFormula } from './constant-over-formula';
import { externalLinks } from './external-links';
import { fixedReference } from './fixed-reference';
import { hidden } from './hidden';
import { lostReference } from './lost-reference';
import { meanEdge } from './mean-edge';
import { numberAsText } from './number-as-text';
import { otherK } from './other-k';
import { prearcingOnBothSides } from './prearcing-on-both-sides';
import { ratioAcrossTypes } from './ratio-across-types';
import { shortRange } from './short-range';
import { temperatureOfCase } from './temperature-of-case';
import { unit } from './unit';
import { unlikeNeighbours } from './unlike-neighbours';
import { verdictByHand } from './verdict-by-hand';
import { voltageFactor } from './voltage-factor';

/** Every rule beside the stored values themselves, in the order of the report. */
export const rules: readonly Rule[] = [
  verdictByHand, unit, voltageFactor, temperatureOfCase, otherK, meanEdge, ratioAcrossTypes, prearcingOnBothSides,
  constantOverFormula, unlikeNeighbours, fixedReference, shortRange, lostReference, numberAsText, externalLinks, hidden,
];
