import { type Box, addressOf, boxText, inBox, parseAddress, parseBox } from './address';
import { Areas } from './areas';
import { type Standing, changesFormula, editedCellXml, newCellXml } from './cell-xml';
import { type CellEdit, editsFormula, judgeEdit } from './edit';
import { type Survey, type SurveyedRow, cellsWithin, judgeArrays, survey } from './patch-survey';
import { type ReadContext, type StoredCell, storedCell } from './read-cells';
import { quoted, refuse } from './refusal';
import type { CellPlace } from './scan';
import { type Splice, spliced } from './splice';
import { attribute, withAttribute } from './xml/attributes';

export interface SheetPatch {
  /** The worksheet part; the very same text where no edit changes anything. */
  readonly text: string;
  readonly changed: number;
  readonly inserted: number;
  /** Formulas came, went or changed: a calculation chain is no longer true. */
  readonly formulasChanged: boolean;
}

/** Puts edits (by address) into a worksheet part. Every byte outside the cells they touch stays as it is. */
export function patchSheet(text: string, edits: ReadonlyMap<string, CellEdit>, context: ReadContext, metadata?: string): SheetPatch {
  if (edits.size === 0) return { text, changed: 0, inserted: 0, formulasChanged: false };
  return new SheetPatcher(text, context, metadata, edits).patch();
}

class SheetPatcher {
  private readonly edits: Map<number, Map<number, CellEdit>> = new Map();
  private readonly found: Survey;
  private readonly splices: Splice[] = [];
  private readonly prefix: string;
  /** Areas that arrays fill when all is done. */
  private readonly areas: Areas<{ readonly box: Box }>;
  private changed = 0;
  private inserted = 0;
  private formulasChanged = false;
  private nextRow = 0;
  private readonly firstRows: string[] = [];
  private readonly outermost = { row: -1, column: -1, top: Infinity, left: Infinity };

  constructor(private readonly text: string, private readonly context: ReadContext, private readonly metadata: string | undefined, edits: ReadonlyMap<string, CellEdit>) {
    for (const [address, edit] of edits) {
      const place = parseAddress(address) ?? refuse(`${quoted(address)} is no cell of a sheet.`);
      judgeEdit(address, edit);
      this.set(place.row, place.column, edit);
    }
    this.found = survey(text, this.edits, context);
    if (!this.found.data) refuse(`The file is damaged: ${context.part} has no list of rows.`);
    this.prefix = /^<([^\s/>]*:)?/.exec(text.slice(this.found.data.start))?.[1] ?? '';
    this.areas = this.prepareArrays();
    for (const address of this.found.unshared) {
      const { row, column } = parseAddress(address)!;
      this.set(row, column, { ...this.edits.get(row)?.get(column) });
    }
  }

  patch(): SheetPatch {
    const rows = new Map(this.found.rows.map((row) => [row.place.row, row]));
    for (const [row, columns] of [...this.edits].sort(([a], [b]) => a - b)) {
      const sorted = [...columns].sort(([a], [b]) => a - b);
      const place = rows.get(row);
      if (place) this.editRow(place, sorted);
      else this.insertRow(row, sorted);
    }
    this.openData();
    this.editDimension();
    return { text: spliced(this.text, this.splices), changed: this.changed, inserted: this.inserted, formulasChanged: this.formulasChanged };
  }

  private set(row: number, column: number, edit: CellEdit): void {
    let columns = this.edits.get(row);
    if (!columns) this.edits.set(row, (columns = new Map()));
    columns.set(column, edit);
  }

  /** Judges edits of arrays, empties what replaced arrays leave behind, and gives the areas of all arrays to be. */
  private prepareArrays(): Areas<{ readonly box: Box }> {
    const { replaced, kept } = judgeArrays(this.found, this.edits);
    const fresh: Box[] = [];
    for (const [row, columns] of this.edits) {
      for (const [column, { arrayRef, formula }] of columns) if (arrayRef != null && typeof formula === 'string') fresh.push(this.newArea(row, column, arrayRef));
    }
    for (const place of cellsWithin(this.text, this.context.part, [...replaced.map(({ box }) => box), ...fresh])) this.judgeCovered(place, fresh);
    return new Areas([...kept, ...fresh.map((box) => ({ box }))]);
  }

  private newArea(row: number, column: number, arrayRef: string): Box {
    const box = parseBox(arrayRef);
    if (!box || box.top !== row || box.left !== column) refuse(`The array ${quoted(arrayRef)} does not begin at its cell ${addressOf(row, column)}.`);
    return box;
  }

  /** A cell under an old or new array: what the old one left is emptied, a formula under the new one is not overwritten. */
  private judgeCovered(place: CellPlace, fresh: readonly Box[]): void {
    const edit = this.edits.get(place.row)?.get(place.column);
    if (edit && (editsFormula(edit) || edit.value !== undefined)) return;
    const box = fresh.find((each) => inBox(each, place.row, place.column));
    const owner = place.formula && box && !(box.top === place.row && box.left === place.column);
    if (owner) refuse(`The array ${boxText(box)} would cover the formula in ${addressOf(place.row, place.column)}.`);
    if (place.formula) return;
    this.found.cells.set(addressOf(place.row, place.column), place);
    this.set(place.row, place.column, { ...edit, value: null });
  }

  private standing(row: number, column: number, edit: CellEdit): Standing {
    return {
      inArray: this.areas.find(row, column) !== undefined, prefix: this.prefix,
      metadata: edit.arrayRef != null && edit.dynamic ? this.metadata : undefined,
    };
  }

  private editRow(row: SurveyedRow, edits: [number, CellEdit][]): void {
    const fresh: { column: number; xml: string }[] = [];
    for (const [column, edit] of edits) {
      const address = addressOf(row.place.row, column);
      const place = this.found.cells.get(address);
      if (place) this.editCell(place, address, edit);
      else {
        const xml = this.newCell(row.place.row, column, edit);
        if (xml !== '') fresh.push({ column, xml });
      }
    }
    if (fresh.length > 0) this.insertCells(row, fresh);
  }

  private editCell(place: CellPlace, address: string, edit: CellEdit): void {
    const now = this.found.formulas.get(address) ?? { formula: null, arrayRef: null };
    const stored: StoredCell = storedCell(this.text, place, this.context, now);
    const after = editedCellXml(this.text, place, stored, edit, { ...this.standing(place.row, place.column, edit), unshared: this.found.unshared.has(address) });
    if (after === this.text.slice(place.start, place.end)) return;
    this.splices.push({ from: place.start, to: place.end, text: after });
    this.changed++;
    this.formulasChanged ||= changesFormula(edit, now);
  }

  private newCell(row: number, column: number, edit: CellEdit): string {
    const xml = newCellXml(addressOf(row, column), edit, this.standing(row, column, edit));
    if (xml === '') return '';
    this.inserted++;
    this.formulasChanged ||= typeof edit.formula === 'string';
    const edge = this.outermost;
    edge.row = Math.max(edge.row, row);
    edge.column = Math.max(edge.column, column);
    edge.top = Math.min(edge.top, row);
    edge.left = Math.min(edge.left, column);
    return xml;
  }

  private insertCells({ place, closeStart, cells }: SurveyedRow, fresh: readonly { column: number; xml: string }[]): void {
    const before = this.text.slice(place.start, place.openEnd);
    const tag = this.spanned(before, fresh.map(({ column }) => column));
    if (place.selfClosing) {
      this.splices.push({ from: place.start, to: place.openEnd, text: `${tag.replace(/\s*\/>$/, '>')}${fresh.map(({ xml }) => xml).join('')}</${this.prefix}row>` });
      return;
    }
    if (tag !== before) this.splices.push({ from: place.start, to: place.openEnd, text: tag });
    for (const { column, xml } of fresh) {
      const at = cells.find((cell) => cell.column > column)?.start ?? closeStart;
      this.splices.push({ from: at, to: at, text: xml });
    }
  }

  /** The row's hint on which columns it fills must not be too narrow. */
  private spanned(tag: string, columns: readonly number[]): string {
    const spans = /^(\d+):(\d+)$/.exec(attribute(tag, 0, tag.length, 'spans') ?? '');
    if (!spans) return tag;
    const from = Math.min(Number(spans[1]), ...columns.map((column) => column + 1));
    const to = Math.max(Number(spans[2]), ...columns.map((column) => column + 1));
    return `${from}:${to}` === spans[0] ? tag : withAttribute(tag, 'spans', `${from}:${to}`);
  }

  private insertRow(row: number, edits: [number, CellEdit][]): void {
    const cells = edits.map(([column, edit]) => this.newCell(row, column, edit)).join('');
    if (cells === '') return;
    const xml = `<${this.prefix}row r="${row + 1}">${cells}</${this.prefix}row>`;
    const { rows, data } = this.found;
    // Rows come in ascending order, so the place before which one goes never moves back.
    while (this.nextRow < rows.length && rows[this.nextRow]!.place.row <= row) this.nextRow++;
    const at = rows[this.nextRow]?.place.start ?? data!.closeStart;
    if (this.text.endsWith('/>', data!.openEnd)) this.firstRows.push(xml);
    else this.splices.push({ from: at, to: at, text: xml });
  }

  /** A list of rows that was one empty tag is opened for its first ones. */
  private openData(): void {
    if (this.firstRows.length === 0) return;
    const { start, openEnd } = this.found.data!;
    const tag = this.text.slice(start, openEnd).replace(/\s*\/>$/, '>');
    this.splices.push({ from: start, to: openEnd, text: `${tag}${this.firstRows.join('')}</${this.prefix}sheetData>` });
  }

  private editDimension(): void {
    const { dimension } = this.found;
    if (!dimension || this.inserted === 0) return;
    const tag = this.text.slice(dimension.start, dimension.end);
    const box = parseBox(attribute(tag, 0, tag.length, 'ref') ?? '');
    if (!box) return;
    const edge = this.outermost;
    const wider = { top: Math.min(box.top, edge.top), left: Math.min(box.left, edge.left), bottom: Math.max(box.bottom, edge.row), right: Math.max(box.right, edge.column) };
    if (boxText(wider) !== boxText(box)) this.splices.push({ from: dimension.start, to: dimension.end, text: withAttribute(tag, 'ref', boxText(wider)) });
  }
}
