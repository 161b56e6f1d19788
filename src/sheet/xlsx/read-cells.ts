import { type Cell, CellError, type ErrorCode } from '../../functions/kernel/cell';
import { SharedFormula } from '../formula/shift';
import { addressOf } from './address';
import { serialOfIsoDate } from './iso-date';
import { quoted, refuse } from './refusal';
import { type CellPlace, type ElementPlace, scanSheet } from './scan';
import { readText } from './shared-strings';
import { attribute } from './xml/attributes';
import { XmlScanner } from './xml/scanner';
import { decodeContent, decodeEscapes } from './xml/text';

export type StoredType = 'blank' | 'number' | 'text' | 'boolean' | 'error';

/** One cell as the file holds it. Rows and columns count from 0. */
export class StoredCell {
  constructor(
    readonly row: number,
    readonly column: number,
    readonly type: StoredType,
    /** The value last computed, or the constant. */
    readonly value: Cell,
    /** In the form of the file, without `=`; shared formulas written out for this cell. */
    readonly formula: string | null,
    /** Place of the array that the formula fills, its own cell included. */
    readonly arrayRef: string | null,
    /** The array spills: it is not confined to its place as one entered for a selection is. */
    readonly dynamic: boolean,
    /** Position in the list of cell formats. */
    readonly style: number,
  ) {}

  get address(): string {
    return addressOf(this.row, this.column);
  }
}

export interface ReadContext {
  readonly part: string;
  readonly strings: readonly string[];
  readonly date1904: boolean;
}

export const STORABLE_ERRORS: ReadonlySet<string> = new Set(['#NULL!', '#DIV/0!', '#VALUE!', '#REF!', '#NAME?', '#NUM!', '#N/A', '#SPILL!', '#CALC!']);

const NUMBER = /^[+-]?(\d+(?:\.\d*)?|\.\d+)(e[+-]?\d+)?$/i;

/** Hands on the cells of a worksheet part one by one, in its order, so that nobody has to hold them all. */
export function eachCell(text: string, context: ReadContext, visit: (cell: StoredCell) => void): void {
  const formulas = new FormulaReader(text, context.part);
  scanSheet(text, context.part, { cell: (place) => visit(readCell(text, place, context, formulas)) });
}

/** All cells of a worksheet part, in its order. */
export function readCells(text: string, context: ReadContext): StoredCell[] {
  const cells: StoredCell[] = [];
  eachCell(text, context, (cell) => { cells.push(cell); });
  return cells;
}

const readCell = (text: string, place: CellPlace, context: ReadContext, formulas: FormulaReader): StoredCell =>
  storedCell(text, place, context, place.formula ? formulas.read(place, place.formula) : NO_FORMULA);

/** One cell, whose formula has been read. */
export function storedCell(text: string, place: CellPlace, context: ReadContext, { formula, arrayRef }: CellFormula): StoredCell {
  const { type, value } = readValue(text, place, context);
  const dynamic = arrayRef !== null && attribute(text, place.start, place.openEnd, 'cm') !== undefined;
  const style = Number(attribute(text, place.start, place.openEnd, 's') ?? 0) || 0;
  return new StoredCell(place.row, place.column, type, value, formula, arrayRef, dynamic, style);
}

export interface CellFormula { readonly formula: string | null; readonly arrayRef: string | null }

const NO_FORMULA = { formula: null, arrayRef: null } as const;
const BLANK = { type: 'blank', value: null } as const;

function readValue(text: string, place: CellPlace, context: ReadContext): { type: StoredType; value: Cell } {
  const kind = attribute(text, place.start, place.openEnd, 't') ?? 'n';
  if (kind === 'inlineStr') return place.inline ? { type: 'text', value: inlineText(text, place.inline, context.part) } : BLANK;
  if (!place.value) return BLANK;
  const raw = decodeContent(text.slice(place.value.textStart, place.value.textEnd));
  const wrong = (what: string): never => refuse(`The file is damaged: ${context.part} holds ${quoted(raw)} in ${addressOf(place.row, place.column)}, which is ${what}.`);
  switch (kind) {
    case 'str': return { type: 'text', value: decodeEscapes(raw) };
    case 's': return { type: 'text', value: (/^\s*\d+\s*$/.test(raw) ? context.strings[Number(raw)] : undefined) ?? wrong('no number of a shared text') };
    case 'b': return { type: 'boolean', value: /^\s*(1|true)\s*$/.test(raw) || (/^\s*(0|false)\s*$/.test(raw) ? false : wrong('no truth value')) };
    case 'e': return { type: 'error', value: storedError(raw.trim()) };
    case 'd': return { type: 'number', value: serialOfIsoDate(raw.trim(), context.date1904) ?? wrong('no date') };
    case 'n': {
      const digits = raw.trim();
      if (digits === '') return BLANK;
      const value = NUMBER.test(digits) ? Number(digits) : NaN;
      return Number.isFinite(value) ? { type: 'number', value } : wrong('no number');
    }
    default: return wrong(`of the unknown type ${quoted(kind)}`);
  }
}

/** Errors that only the program which wrote them can explain are carried along, but nothing is computed from them. */
const storedError = (code: string): CellError =>
  STORABLE_ERRORS.has(code) ? new CellError(code as ErrorCode) : new CellError('#UNSUPPORTED!', `the file stores the error ${quoted(code)}`);

function inlineText(text: string, place: ElementPlace, part: string): string {
  const scanner = new XmlScanner(text.slice(place.start, place.end), part);
  scanner.next();
  return readText(scanner);
}

/** Formulas of one sheet; those of cells that share one are written out. */
export class FormulaReader {
  private readonly shared = new Map<string, SharedFormula>();

  constructor(private readonly text: string, private readonly part: string) {}

  read(place: CellPlace, formula: ElementPlace): CellFormula {
    const { text } = this;
    const written = decodeEscapes(decodeContent(text.slice(formula.textStart, formula.textEnd)));
    const kind = attribute(text, formula.start, formula.openEnd, 't') ?? 'normal';
    const ref = attribute(text, formula.start, formula.openEnd, 'ref') ?? addressOf(place.row, place.column);
    if (kind === 'array') return { formula: written, arrayRef: ref };
    if (kind === 'dataTable') return { formula: this.dataTable(formula), arrayRef: ref };
    return kind === 'shared' ? plain(this.sharedText(place, formula, written)) : plain(written);
  }

  private sharedText(place: CellPlace, formula: ElementPlace, written: string): string {
    const group = attribute(this.text, formula.start, formula.openEnd, 'si') ?? '';
    if (written !== '') {
      this.shared.set(group, new SharedFormula(written, place.row, place.column));
      return written;
    }
    const master = this.shared.get(group) ?? refuse(`The file is damaged: ${this.part} refers in ${addressOf(place.row, place.column)} to a shared formula that is not written before it.`);
    return master.at(place.row, place.column);
  }

  /** A what-if table, as spreadsheet programs show it. */
  private dataTable(formula: ElementPlace): string {
    const read = (name: string): string => attribute(this.text, formula.start, formula.openEnd, name) ?? '';
    const one = read('r1');
    if (/^(1|true)$/.test(read('dt2D'))) return `TABLE(${one},${read('r2')})`;
    return /^(1|true)$/.test(read('dtr')) ? `TABLE(${one},)` : `TABLE(,${one})`;
  }
}

const plain = (formula: string): CellFormula => ({ formula: formula === '' ? null : formula, arrayRef: null });
