export type { Context, CustomFunction, CustomFunctions, Workbook } from './context';
export { type Compiled, type CompileOptions, applyOperator, callFunction, compile, evaluate, evaluateValue } from './evaluate';
export { NotSupported } from './errors';
export { functionNames } from './function-table';
export { emptyWorkbook } from './inline-workbook';
export { LIMITS } from './limits';
export { textOfNumber } from './number-text';
export { Reference, Union, columnLetters } from './references';
export { Lambda, type Value } from './values';
