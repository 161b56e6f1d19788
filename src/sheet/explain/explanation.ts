import type { HostTraits } from '../../functions/kernel/call';
import type { Cell, Matrix } from '../../functions/kernel/cell';
import type { ExplainedStep } from '../../functions/kernel/explain';
import type { ArgumentFault } from '../../functions/kernel/read-arguments';
import type { SheetName } from '../calculate/names';
import type { SheetTable } from '../calculate/structured';
import type { Box } from '../xlsx/address';

/** A cell whose formula is explained; rows and columns count from 0. */
export interface ExplainedCell {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  /** With or without its leading =, in the form of the file or of the page. */
  readonly formula: string;
  /** What the cell shows; a spill as its rows. */
  readonly value: Cell | Matrix;
  /** Where the cell is one that the formula fills from elsewhere: its place in the spill. Sheet, row and column are then those of the formula. */
  readonly part?: readonly [row: number, column: number];
}

/** Where the values of a workbook come from. A host may have to ask for them, so every answer may come later. */
export interface ValueSource {
  /** Last row and column of a sheet that hold anything, -1 where it is blank; undefined where there is no such sheet. */
  used(sheet: string): Promise<readonly [lastRow: number, lastColumn: number] | undefined>;
  /** Rows of cells; null where a cell is blank. */
  cells(sheet: string, box: Box): Promise<Matrix>;
  names(): Promise<readonly SheetName[]>;
  tables(): Promise<readonly SheetTable[]>;
  /** Place that the formula in a cell spills over; undefined where it does not. */
  spill(sheet: string, row: number, column: number): Promise<Box | undefined>;
}

/** How one call of a formula went. */
export interface ExplainedCall {
  /** With the namespace: JW.CABLE_K. */
  readonly name: string;
  /** The call as it stands in the formula. */
  readonly text: string;
  /** Calls of ours around it: 0 for an outermost one. */
  readonly depth: number;
  readonly summary: string;
  /** Not worked: the result did not need it, such as the other branch of an IF. */
  readonly state: 'worked' | 'refused' | 'not worked';
  /** Times it was worked, over one in arrays and LAMBDAs; what follows is the last. */
  readonly times: number;
  /** Result with its unit, or the error's code. */
  readonly result: string;
  /** Why it was refused. */
  readonly reason: string;
  /** Name of the call inside it whose error it handed on. */
  readonly handedOnFrom?: string;
  /** Working in one line. */
  readonly line: string;
  readonly given: readonly { readonly name: string; readonly text: string }[];
  readonly steps: readonly ExplainedStep[];
  readonly clause: string;
  /** Arguments outside their bounds or not readable, each with its name in the words; empty where all are inside. */
  readonly faults: readonly ArgumentFault[];
  /** Defaults taken for what was left out. */
  readonly assumed: string;
  /** Of this call. */
  readonly cautions: readonly string[];
  /** Of the function, whatever the call. */
  readonly standingCaution: string;
}

/** Cells that a formula reads. */
export interface Precedent {
  /** As the formula writes it. */
  readonly text: string;
  readonly sheet: string;
  readonly box: Box;
  /** What a single cell holds; the size of a range. */
  readonly value: string;
}

export interface Explanation {
  /** Outermost first, then as the formula reads. */
  readonly calls: readonly ExplainedCall[];
  /** As the formula reads; names that mean no cells are not among them. */
  readonly precedents: readonly Precedent[];
  /** The formula is one call of ours and nothing else. */
  readonly single: boolean;
  /** What the cell shows, with the unit where the formula is one call. */
  readonly value: string;
  /** Reason of an error that the cell shows, where one is known. */
  readonly reason: string;
  /** Set where the values of the sheet, worked again, do not give what the cell shows. */
  readonly disagrees: string;
  /** Why there is nothing to explain, or not all of it. */
  readonly remark: string;
}

/** Explains the formula of a cell from the values that a host supplies. */
export type Explain = (cell: ExplainedCell, source: ValueSource, traits: HostTraits) => Promise<Explanation>;
