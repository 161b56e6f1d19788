/** Names of comparisons in workbook files, as formulas write them. */
export const COMPARISON_SIGNS: ReadonlyMap<string, string> = new Map([
  ['equal', '='], ['notEqual', '<>'], ['greaterThan', '>'], ['greaterThanOrEqual', '>='], ['lessThan', '<'], ['lessThanOrEqual', '<='],
]);
