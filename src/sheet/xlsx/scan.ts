import { LAST_COLUMN, LAST_ROW, addressOf, parseAddress } from './address';
import { quoted, refuse } from './refusal';
import { attribute } from './xml/attributes';
import { XmlScanner, damagedXml } from './xml/scanner';

/** An element inside a cell: the tags and, between `textStart` and `textEnd`, what they enclose. */
export interface ElementPlace {
  readonly start: number;
  readonly openEnd: number;
  readonly textStart: number;
  readonly textEnd: number;
  readonly end: number;
}

export interface RowPlace {
  readonly row: number;
  readonly start: number;
  readonly openEnd: number;
  readonly selfClosing: boolean;
}

export interface CellPlace {
  readonly row: number;
  readonly column: number;
  readonly start: number;
  readonly openEnd: number;
  /** Start of the closing tag; `openEnd` where the cell is one self-closing tag. */
  readonly closeStart: number;
  readonly end: number;
  readonly formula: ElementPlace | undefined;
  readonly value: ElementPlace | undefined;
  readonly inline: ElementPlace | undefined;
}

/** What a scan meets, in the order of the part. */
export interface SheetVisitor {
  row?(row: RowPlace): void;
  cell(cell: CellPlace): void;
  /** `closeStart`: where another cell of the row could be put. */
  rowEnd?(row: RowPlace, closeStart: number): void;
  /** Every element beside the rows, its opening tag at hand in the scanner. */
  other?(scanner: XmlScanner): void;
  /** The element of all rows: opening tag, and start of its closing tag (the same place where it is empty). */
  data?(start: number, openEnd: number, closeStart: number): void;
}

/** Walks over a worksheet part. Places are offsets into its text, so that all bytes around a cell can be kept. */
export function scanSheet(text: string, part: string, visitor: SheetVisitor): void {
  const scanner = new XmlScanner(text, part);
  scanner.next();
  if (scanner.name !== 'worksheet') refuse(`The file is damaged: ${part} is no worksheet but ${quoted(scanner.name)}.`);
  let found = false;
  while (scanner.next()) {
    if (scanner.closing) continue;
    const name: string = scanner.name;
    if (name !== 'sheetData') {
      visitor.other?.(scanner);
      scanner.skip();
      continue;
    }
    if (found) damagedXml(part, 'has two lists of rows');
    found = true;
    const { start, end, selfClosing } = scanner;
    if (!selfClosing) scanRows(scanner, visitor);
    visitor.data?.(start, end, selfClosing ? end : scanner.start);
  }
}

function scanRows(scanner: XmlScanner, visitor: SheetVisitor): void {
  const seen = new Set<number>();
  let last = -1;
  while (scanner.next() && !scanner.closing) {
    if (scanner.name !== 'row') {
      scanner.skip();
      continue;
    }
    const row = rowNumber(scanner, last);
    if (seen.has(row)) damagedXml(scanner.part, `holds row ${row + 1} twice`);
    seen.add(row);
    last = row;
    const place: RowPlace = { row, start: scanner.start, openEnd: scanner.end, selfClosing: scanner.selfClosing };
    visitor.row?.(place);
    if (!scanner.selfClosing) scanCells(scanner, row, visitor);
    visitor.rowEnd?.(place, place.selfClosing ? place.openEnd : scanner.start);
  }
}

/** The row's number, or the next one where it is not written. */
function rowNumber(scanner: XmlScanner, last: number): number {
  const written = attribute(scanner.text, scanner.start, scanner.end, 'r');
  const row = written === undefined ? last + 1 : Number(written) - 1;
  return Number.isInteger(row) && row >= 0 && row <= LAST_ROW ? row : damagedXml(scanner.part, `holds a row numbered ${quoted(written ?? String(row + 1))}`);
}

function scanCells(scanner: XmlScanner, row: number, visitor: SheetVisitor): void {
  const columns: number[] = [];
  let disordered: Set<number> | undefined;
  let last = -1;
  while (scanner.next() && !scanner.closing) {
    if (scanner.name !== 'c') {
      scanner.skip();
      continue;
    }
    const column = columnNumber(scanner, row, last);
    if (column <= last || disordered) {
      disordered ??= new Set(columns);
      if (disordered.has(column)) damagedXml(scanner.part, `holds the cell ${addressOf(row, column)} twice`);
      disordered.add(column);
    }
    columns.push(column);
    last = column;
    visitor.cell(readCell(scanner, row, column));
  }
}

function columnNumber(scanner: XmlScanner, row: number, last: number): number {
  const written = attribute(scanner.text, scanner.start, scanner.end, 'r');
  if (written === undefined) return last < LAST_COLUMN ? last + 1 : damagedXml(scanner.part, `holds too many cells in row ${row + 1}`);
  const address = parseAddress(written);
  return address && address.row === row ? address.column : damagedXml(scanner.part, `holds the cell ${quoted(written)} in row ${row + 1}`);
}

function readCell(scanner: XmlScanner, row: number, column: number): CellPlace {
  const start = scanner.start;
  const openEnd = scanner.end;
  let formula: ElementPlace | undefined;
  let value: ElementPlace | undefined;
  let inline: ElementPlace | undefined;
  if (scanner.selfClosing) return { row, column, start, openEnd, closeStart: openEnd, end: openEnd, formula, value, inline };
  while (scanner.next() && !scanner.closing) {
    const { name } = scanner;
    const place = readElement(scanner);
    if (name === 'f') formula = place;
    else if (name === 'v') value = place;
    else if (name === 'is') inline = place;
  }
  return { row, column, start, openEnd, closeStart: scanner.start, end: scanner.end, formula, value, inline };
}

function readElement(scanner: XmlScanner): ElementPlace {
  const { start, end, selfClosing } = scanner;
  if (selfClosing) return { start, openEnd: end, textStart: end, textEnd: end, end };
  scanner.skip();
  return { start, openEnd: end, textStart: end, textEnd: scanner.start, end: scanner.end };
}
