export { type CheckOptions, type Checked, checkWorkbook } from './check-book';
export { CLASS_WORDS, FINDING_CLASSES, type Finding, type FindingClass } from './finding';
export { allRules } from './all-rules';
export { LEAST_TOLERANCE } from './agree';
export { type Comparison, type Difference, type Side, compareWorkbooks } from './compare-books';
