import type { CellError } from '../../functions/kernel/cell';
import { sameValue } from '../../sheet/book';
import { isWorkedOut } from '../grid/cell-values';
import { GridValues } from '../grid/contents';
import type { OpenFile } from './open-file';

/** How the values that the file stores compare with those worked out here. */
export interface Agreement {
  readonly formulas: number;
  /** Formulas that come out otherwise than stored: `Sheet!C5`. */
  readonly differing: readonly string[];
  /** Formulas that are not worked out here, with the reason. */
  readonly notWorked: readonly { readonly where: string; readonly reason: string }[];
}

export function agreementOf({ model, sheets }: Pick<OpenFile, 'model' | 'sheets'>): Agreement {
  const values = new GridValues(model);
  const differing: string[] = [];
  const notWorked: { where: string; reason: string }[] = [];
  let formulas = 0;
  for (const { facts, stored } of sheets) {
    for (const { formula, address, row, column, value } of stored) {
      if (formula === null) continue;
      formulas += 1;
      const now = values.at(facts.name, row, column) ?? 0;
      const where = `${facts.name}!${address}`;
      if (!isWorkedOut(now)) notWorked.push({ where, reason: (now as CellError).message });
      else if (!sameValue(now, value)) differing.push(where);
    }
  }
  return { formulas, differing, notWorked };
}
