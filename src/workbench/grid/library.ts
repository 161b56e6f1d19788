import type * as Library from '@odoo/o-spreadsheet';
import type { CompiledFormula } from '@odoo/o-spreadsheet/dist/types/formulas/compiler';

/** The grid's module, as page and tests load it. It stays a file of its own, so everything of it is reached through this type. */
export type GridLibrary = typeof Library;

export type { Model } from '@odoo/o-spreadsheet';
export type { CompiledFormula };

export type Range = CompiledFormula['rangeDependencies'][number];
export type CoreGetters = Parameters<CompiledFormula['toFormulaString']>[0];
export type RangeStringOptions = Parameters<CompiledFormula['toFormulaString']>[1];
export type Execute = CompiledFormula['execute'];
export type Getters = InstanceType<GridLibrary['Model']>['getters'];
export type CellPosition = ReturnType<Getters['getActivePosition']>;
export type EvaluatedCell = ReturnType<Getters['getEvaluatedCell']>;

/** What a formula gives back to the grid: one cell, or columns of cells. */
export interface GridResult {
  value: string | number | boolean | null;
  message?: string;
}

/** What the grid hands to a formula when it runs. */
export interface EvalContext {
  readonly __originSheetId: string;
  readonly __originCellPosition?: CellPosition;
  readonly getters: Getters;
  readonly getFormulaResult: (position: CellPosition) => GridResult;
  readonly addDependencies?: (position: CellPosition, ranges: Range[]) => void;
}
