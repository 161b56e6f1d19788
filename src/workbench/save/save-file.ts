import { type Cell, CellError } from '../../functions/kernel/cell';
import { sameValue } from '../../sheet/book';
import { FormulaRefusal } from '../../sheet/formula/forms';
import { addressOf, boxText, inBox, parseAddress } from '../../sheet/xlsx/address';
import type { CellEdit } from '../../sheet/xlsx/edit';
import { patchWorkbook } from '../../sheet/xlsx/patch-workbook';
import type { StoredCell } from '../../sheet/xlsx/read-cells';
import { refuse } from '../../sheet/xlsx/refusal';
import { isWorkedOut } from '../grid/cell-values';
import { type Contents, GridValues, constantOf, contentsOf } from '../grid/contents';
import type { OpenFile } from '../open/open-file';
import { formulaForms } from '../open/open-file';
import type { ReadSheet } from '../open/workbook-data';
import { worksOnArrays } from './array-formula';

export interface Saved {
  /** The file with the edits; the very same bytes where nothing was edited. */
  readonly bytes: Uint8Array;
  /** Cells that were typed into. */
  readonly edited: number;
  /** Formulas whose stored value was written anew. */
  readonly recalculated: number;
  /** Formulas that could not be worked out: their stored values stand. */
  readonly kept: number;
  /** Cells that the grid shows with a number format which typing brought along, and which is not written. */
  readonly unformatted: readonly string[];
}

type Edits = Map<string, CellEdit>;

interface Tally {
  edited: number;
  recalculated: number;
  kept: number;
  unformatted: string[];
}

/** The open file as it is to be written; WorkbookRefusal, in words, where something in it cannot be. */
export function savedFile(file: OpenFile, before: Contents): Saved {
  const now = contentsOf(file.model);
  const values = new GridValues(file.model);
  const edits = new Map<string, Edits>();
  const tally: Tally = { edited: 0, recalculated: 0, kept: 0, unformatted: [] };
  for (const sheet of file.sheets) edits.set(sheet.facts.name, editsOf(file, sheet, before.get(sheet.facts.name) ?? new Map(), now.get(sheet.facts.name) ?? new Map(), values, tally));
  if (tally.edited === 0) return { bytes: file.bytes, ...tally };
  for (const sheet of file.sheets) addValues(sheet, edits.get(sheet.facts.name)!, values, tally);
  return { bytes: patchWorkbook(file.workbook, edits), ...tally };
}

/** Cells whose content is another than it was. */
function editsOf(file: OpenFile, sheet: ReadSheet, before: ReadonlyMap<string, string>, now: ReadonlyMap<string, string>, values: GridValues, tally: Tally): Edits {
  const edits: Edits = new Map();
  const stored = new Map(sheet.stored.map((cell) => [cell.address, cell]));
  for (const address of new Set([...before.keys(), ...now.keys()])) {
    const content = now.get(address) ?? '';
    if (content === (before.get(address) ?? '')) continue;
    tally.edited += 1;
    const { row, column } = parseAddress(address)!;
    const style = file.styles.get(sheet.facts.name)!.ofNew(row, column);
    const looks = style === undefined ? {} : { style };
    const shown = values.format(sheet.facts.name, row, column);
    if (shown !== undefined && shown !== file.formatOf(sheet.facts.name, row, column)) tally.unformatted.push(`${sheet.facts.name}!${address}`);
    if (content.startsWith('=')) edits.set(address, { ...formulaEdit(file, sheet, address, content, values), ...looks });
    else edits.set(address, { value: storable(constantOf(values, sheet.facts.name, row, column), `${sheet.facts.name}!${address}`), ...(stored.get(address)?.formula == null ? {} : { formula: null }), ...looks });
  }
  return edits;
}

/** A value that a file can hold. */
function storable(value: Cell, where: string): Cell {
  if (isWorkedOut(value)) return value;
  const { message, code } = value as CellError;
  return refuse(`${where}: ${message || code}. Correct or clear the cell, then save again.`);
}

function formulaEdit(file: OpenFile, sheet: ReadSheet, address: string, content: string, values: GridValues): CellEdit {
  const where = `${sheet.facts.name}!${address}`;
  const { row, column } = parseAddress(address)!;
  const value = values.at(sheet.facts.name, row, column);
  if (value instanceof CellError && value.code === '#NAME?') refuse(`${where}: ${content} is no formula that a workbook takes: ${value.message}. Correct or clear the cell, then save again.`);
  const table = file.workbook.facts.tables.find((each) => each.sheet === sheet.facts.name && inBox(each.box, row, column));
  const formula = fileForm(where, content, table?.name);
  const spill = values.spill(sheet.facts.name, row, column);
  const text = content.slice(1);
  const array = spill ? { arrayRef: boxText(spill), dynamic: true } : worksOnArrays(text) ? { arrayRef: address, dynamic: true } : {};
  return { value: storable(value ?? 0, where), formula, ...array };
}

function fileForm(where: string, content: string, table: string | undefined): string {
  try {
    return formulaForms.toFile(content.slice(1), table);
  } catch (thrown) {
    if (thrown instanceof FormulaRefusal) refuse(`${where}: ${content} is no formula that a workbook takes: ${thrown.message}. Correct or clear the cell, then save again.`);
    throw thrown;
  }
}

/** Values of formulas that now differ from the stored ones, and of all that spills. */
function addValues(sheet: ReadSheet, edits: Edits, values: GridValues, tally: Tally): void {
  const { name } = sheet.facts;
  const stored = new Map(sheet.stored.map((cell) => [cell.address, cell]));
  for (const cell of sheet.stored) {
    if (cell.formula === null || edits.has(cell.address)) continue;
    const written = respilled(sheet, cell, values) ?? {};
    const value = values.at(name, cell.row, cell.column);
    if (!isWorkedOut(value)) {
      tally.kept += 1;
      continue;
    }
    const shown = value ?? 0;
    if (sameValue(shown, cell.value) && Object.keys(written).length === 0) continue;
    tally.recalculated += 1;
    edits.set(cell.address, { value: shown, ...written });
  }
  // Writing an array's formula anew empties the cells of its old place, so all its values go with it.
  for (const [address, { arrayRef }] of [...edits]) if (arrayRef) addSpilled(name, address, edits, undefined, values);
  for (const { anchor, box } of sheet.contents.arrays) {
    if (edits.get(anchor)?.formula !== undefined) clearSpilled(box, anchor, edits, stored, values, name);
    else addSpilled(name, anchor, edits, stored, values);
  }
}

/** The formula of the file with another place, where what it spills has grown or shrunk. */
function respilled({ facts, contents }: ReadSheet, { row, column, formula, arrayRef, dynamic, address }: StoredCell, values: GridValues): CellEdit | undefined {
  if (!dynamic || arrayRef === null) return undefined;
  const spill = values.spill(facts.name, row, column);
  const place = spill ? boxText(spill) : address;
  const known = contents.arrays.find(({ anchor }) => anchor === address);
  return place === (known ? boxText(known.box) : address) ? undefined : { formula: formula!, arrayRef: place, dynamic: true };
}

/** Values that an array fills beyond its own cell; of those that are stored already (`stored`) only the ones that differ. */
function addSpilled(sheet: string, anchor: string, edits: Edits, stored: ReadonlyMap<string, StoredCell> | undefined, values: GridValues): void {
  const { row, column } = parseAddress(anchor)!;
  const box = values.spill(sheet, row, column);
  if (!box) return;
  for (let r = box.top; r <= box.bottom; r++) {
    for (let c = box.left; c <= box.right; c++) {
      const address = addressOf(r, c);
      const value = values.at(sheet, r, c) ?? 0;
      if (address !== anchor && isWorkedOut(value) && !(stored && sameValue(value, stored.get(address)?.value ?? null))) edits.set(address, { value });
    }
  }
}

/** Cells that an array of the file filled and that are blank now. */
function clearSpilled(box: { top: number; left: number; bottom: number; right: number }, anchor: string, edits: Edits, stored: ReadonlyMap<string, StoredCell>, values: GridValues, sheet: string): void {
  for (let row = box.top; row <= box.bottom; row++) {
    for (let column = box.left; column <= box.right; column++) {
      const address = addressOf(row, column);
      if (address !== anchor && !edits.has(address) && stored.get(address)?.value != null && values.at(sheet, row, column) === null) edits.set(address, { value: null });
    }
  }
}
