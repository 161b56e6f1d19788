import { aggregateFunctions } from './functions/aggregate';
import { arrayFunctions } from './functions/arrays';
import { complexFunctions } from './functions/complex';
import { conditionalFunctions } from './functions/conditional';
import { convertFunctions } from './functions/convert';
import { dateFunctions } from './functions/date';
import type { Definition, FunctionTable } from './functions/definition';
import { higherOrderFunctions } from './functions/higher-order';
import { informationFunctions } from './functions/information';
import { logicalFunctions } from './functions/logical';
import { longTailFunctions } from './functions/long-tail';
import { lookupFunctions } from './functions/lookup';
import { mathFunctions } from './functions/math';
import { matrixFunctions } from './functions/matrix';
import { placeFunctions } from './functions/place';
import { radixFunctions } from './functions/radix';
import { refusedFunctions } from './functions/refused';
import { roundingFunctions } from './functions/rounding';
import { statisticsFunctions } from './functions/statistics';
import { textFunctions } from './functions/text';
import { textSplitFunctions } from './functions/text-split';

const tables: readonly FunctionTable[] = [
  aggregateFunctions, arrayFunctions, complexFunctions, conditionalFunctions, convertFunctions, dateFunctions, higherOrderFunctions,
  informationFunctions, logicalFunctions, longTailFunctions, lookupFunctions, mathFunctions, matrixFunctions, placeFunctions, radixFunctions,
  refusedFunctions, roundingFunctions, statisticsFunctions, textFunctions, textSplitFunctions,
];

const functions: ReadonlyMap<string, Definition> = new Map(tables.flatMap((table) => Object.entries(table)));

/** The function of this name, in capitals and without the prefixes of files. */
export const findFunction = (name: string): Definition | undefined => functions.get(name);

/** Names of all of Excel's functions that are known here, in order. */
export const functionNames = (): string[] => [...functions.keys()].sort();
