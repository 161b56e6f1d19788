import { type Box, addressOf, boxText, oneCell, parseBox } from './address';
import { Areas } from './areas';
import { changesFormula } from './cell-xml';
import { type CellEdit, editsFormula } from './edit';
import { type CellFormula, FormulaReader, type ReadContext } from './read-cells';
import { quoted, refuse } from './refusal';
import { type CellPlace, type RowPlace, scanSheet } from './scan';
import { attribute } from './xml/attributes';

/** An array formula or what-if table of the sheet. */
export interface ArrayArea {
  readonly row: number;
  readonly column: number;
  readonly box: Box;
  readonly whatIf: boolean;
}

export interface SurveyedRow {
  readonly place: RowPlace;
  readonly closeStart: number;
  /** Column and start of its cells, in the order of the part; empty unless an edit makes a cell that the row does not hold. */
  readonly cells: readonly { column: number; start: number }[];
}

/** What a patch needs to know of a sheet: where the edited cells stand, and what else hangs on them. */
export interface Survey {
  readonly rows: SurveyedRow[];
  readonly cells: Map<string, CellPlace>;
  readonly arrays: ArrayArea[];
  /** Formulas that cells shared with an edited one, each to be written out. */
  readonly unshared: Set<string>;
  readonly formulas: Map<string, CellFormula>;
  dimension: { start: number; end: number } | undefined;
  data: { start: number; openEnd: number; closeStart: number } | undefined;
}

/** Edits by row, then column. */
export type EditsByRow = ReadonlyMap<number, ReadonlyMap<number, CellEdit>>;

const NONE: SurveyedRow['cells'] = [];

export function survey(text: string, edits: EditsByRow, context: ReadContext): Survey {
  const found: Survey = { rows: [], cells: new Map(), arrays: [], unshared: new Set(), formulas: new Map(), dimension: undefined, data: undefined };
  const reader = new FormulaReader(text, context.part);
  const dissolved = new Set<string>();
  let ofRow: ReadonlyMap<number, CellEdit> | undefined;
  let cells: { column: number; start: number }[] = [];
  let hit = 0;
  scanSheet(text, context.part, {
    row: (row) => {
      ofRow = edits.get(row.row);
      cells = [];
      hit = 0;
    },
    cell: (place) => {
      const edit = ofRow?.get(place.column);
      if (ofRow) cells.push({ column: place.column, start: place.start });
      if (edit) {
        found.cells.set(addressOf(place.row, place.column), place);
        hit++;
      }
      if (place.formula) surveyFormula(text, place, edit, { found, reader, dissolved });
    },
    rowEnd: (place, closeStart) => { found.rows.push({ place, closeStart, cells: hit < (ofRow?.size ?? 0) ? cells : NONE }); },
    other: ({ name, start, end }) => { if (name === 'dimension') found.dimension = { start, end }; },
    data: (start, openEnd, closeStart) => { found.data = { start, openEnd, closeStart }; },
  });
  return found;
}

function surveyFormula(text: string, place: CellPlace, edit: CellEdit | undefined, { found, reader, dissolved }: { found: Survey; reader: FormulaReader; dissolved: Set<string> }): void {
  const formula = place.formula!;
  const kind = attribute(text, formula.start, formula.openEnd, 't');
  if (kind === undefined && !edit) return;
  const group = kind === 'shared' ? attribute(text, formula.start, formula.openEnd, 'si') ?? '' : undefined;
  const follower = group !== undefined && formula.textEnd === formula.textStart;
  if (follower && !edit && !dissolved.has(group)) return;
  const address = addressOf(place.row, place.column);
  const read = reader.read(place, formula);
  if (edit) found.formulas.set(address, read);
  if (kind === 'array' || kind === 'dataTable') {
    const box = parseBox(read.arrayRef!) ?? refuse(`The file is damaged: the array in ${address} fills ${quoted(read.arrayRef!)}.`);
    found.arrays.push({ row: place.row, column: place.column, box, whatIf: kind === 'dataTable' });
  }
  if (group === undefined) return;
  if (!follower) {
    if (edit && changesFormula(edit, read)) dissolved.add(group);
    else dissolved.delete(group);
  } else if (dissolved.has(group) && !(edit && changesFormula(edit, read))) {
    found.unshared.add(address);
    found.cells.set(address, place);
    found.formulas.set(address, read);
  }
}

/** Cells of the areas given: a second walk, for the rare edit of an array. */
export function cellsWithin(text: string, part: string, boxes: readonly Box[]): CellPlace[] {
  const within: CellPlace[] = [];
  const areas = new Areas(boxes.map((box) => ({ box })));
  if (boxes.length > 0) scanSheet(text, part, { cell: (place) => { if (areas.find(place.row, place.column)) within.push(place); } });
  return within;
}

/** Refuses a change to a part of an array; gives the arrays that are replaced as a whole, and those of several cells that stay. */
export function judgeArrays(found: Survey, edits: EditsByRow): { replaced: ArrayArea[]; kept: ArrayArea[] } {
  const replaces = (area: ArrayArea): boolean => {
    const edit = edits.get(area.row)?.get(area.column);
    return edit !== undefined && changesFormula(edit, found.formulas.get(addressOf(area.row, area.column))!);
  };
  const replaced = found.arrays.filter(replaces);
  const whatIf = replaced.find((area) => area.whatIf);
  if (whatIf) refuse(`${addressOf(whatIf.row, whatIf.column)} belongs to the what-if table ${boxText(whatIf.box)}; it is changed in a spreadsheet program only.`);
  const kept = found.arrays.filter((area) => !replaces(area) && !oneCell(area.box));
  const places = new Areas(kept);
  for (const [row, columns] of edits) {
    for (const [column, edit] of columns) {
      const area = editsFormula(edit) ? places.find(row, column) : undefined;
      if (area && !(area.row === row && area.column === column)) {
        refuse(`${addressOf(row, column)} is part of the array ${boxText(area.box)}, whose formula stands in ${addressOf(area.row, area.column)}; only the whole array can be changed.`);
      }
    }
  }
  return { replaced, kept };
}
