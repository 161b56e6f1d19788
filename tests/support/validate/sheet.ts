import { type Element, type Parts, all, child, children, richText, unescaped } from './parts';
import { type Book, type Sheet, validateSpace } from './workbook';

const ORDER = `sheetPr dimension sheetViews sheetFormatPr cols sheetData sheetCalcPr sheetProtection protectedRanges scenarios autoFilter sortState
dataConsolidate customSheetViews mergeCells phoneticPr conditionalFormatting dataValidations hyperlinks printOptions pageMargins pageSetup headerFooter
rowBreaks colBreaks customProperties cellWatches ignoredErrors smartTags drawing legacyDrawing legacyDrawingHF drawingHF picture oleObjects controls
webPublishItems tableParts extLst`.split(/\s+/);
const ERRORS = /^#(NULL!|DIV\/0!|VALUE!|REF!|NAME\?|NUM!|N\/A|GETTING_DATA|SPILL!|CALC!|BUSY!|FIELD!|CONNECT!|BLOCKED!|UNKNOWN!)$/;

export interface Box { readonly top: number; readonly left: number; readonly bottom: number; readonly right: number }
export interface SheetCell { readonly address: string; readonly type: string; readonly value: string | undefined; readonly formula: string | undefined }

export const columnNumber = (letters: string): number => [...letters].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0);
export const columnName = (number: number): string => (number > 0 ? columnName(Math.floor((number - 1) / 26)) + String.fromCharCode(65 + ((number - 1) % 26)) : '');
const place = (text: string): [number, number] => { const [, letters = 'A', digits = '0'] = /^\$?([A-Z]+)\$?(\d+)$/.exec(text) ?? []; return [Number(digits), columnNumber(letters)]; };
export function boxOf(text: string): Box {
  const [from = '', to = from] = text.split(':');
  const [[top, left], [bottom, right]] = [place(from), place(to)];
  return { top, left, bottom, right };
}
export const meet = (a: Box, b: Box): boolean => a.top <= b.bottom && b.top <= a.bottom && a.left <= b.right && b.left <= a.right;

/** A worksheet: order of its elements, cells, merges, formats on conditions, validation. Gives its cells by address. */
export function validateSheet(parts: Parts, book: Book, { name, part }: Sheet): Map<string, SheetCell> {
  const root = parts.tree(part);
  const cells = new Map<string, SheetCell>();
  if (root.name !== 'worksheet') return cells;
  const bad = (what: string): void => parts.bad(name, what);
  let last = -1;
  for (const each of root.children) {
    const at = ORDER.indexOf(each.name);
    if (at >= 0 && at < last) bad(`<${each.name}> after <${ORDER[last]}>`);
    last = Math.max(last, at);
  }
  let row = 0;
  for (const each of children(child(root, 'sheetData'), 'row')) {
    const number = Number(each.attributes.r ?? row + 1);
    if (!(number > row && number <= 1_048_576)) bad(`row ${number} is out of order`);
    row = number;
    validateRow(parts, book, name, each, number, cells);
  }
  validateDimension(parts, name, root, cells);
  validateMerges(bad, root);
  validateConditions(bad, root, book.differentialFormats);
  for (const rule of all(root, 'dataValidation')) validateRule(bad, rule);
  for (const cell of all(root, 'c')) if (cell.attributes.cm !== undefined && !parts.names.some((each) => /metadata\.xml$/.test(each))) bad(`${cell.attributes.r} has cell metadata, the workbook has none`);
  return cells;
}

function validateRow(parts: Parts, book: Book, sheet: string, element: Element, row: number, cells: Map<string, SheetCell>): void {
  let column = 0;
  const spans = /^(\d+):(\d+)$/.exec(element.attributes.spans ?? '');
  for (const cell of children(element, 'c')) {
    const address = cell.attributes.r ?? columnName(column + 1) + row;
    const [ofRow, ofColumn] = place(address);
    if (ofRow !== row || ofColumn <= column) parts.bad(sheet, `${address} is out of order`);
    column = ofColumn;
    if (spans && (column < Number(spans[1]) || column > Number(spans[2]))) parts.bad(sheet, `${address} stands outside of its row's spans ${spans[0]}`);
    if (Number(cell.attributes.s ?? 0) >= book.formats) parts.bad(sheet, `${address} has the format ${cell.attributes.s} of ${book.formats}`);
    cells.set(address, validateCell(parts, book, sheet, address, cell));
  }
}

function validateCell(parts: Parts, book: Book, sheet: string, address: string, cell: Element): SheetCell {
  const bad = (what: string): void => parts.bad(sheet, `${address} ${what}`);
  const type = cell.attributes.t ?? 'n';
  const value = child(cell, 'v')?.text;
  const formula = child(cell, 'f');
  const inline = child(cell, 'is');
  const order = cell.children.map((each) => ['f', 'v', 'is', 'extLst'].indexOf(each.name));
  if (order.some((at, index) => at < 0 || (index > 0 && at <= order[index - 1]!))) bad('has its elements out of order');
  if (type === 'n' && value !== undefined && value !== '' && !/^-?\d+(\.\d+)?(E[+-]?\d+)?$/i.test(value)) bad(`holds the number ${value}`);
  if (type === 'b' && !/^[01]$/.test(value ?? '')) bad(`holds the truth value ${value}`);
  if (type === 'e' && !ERRORS.test(value ?? '')) bad(`holds the error ${value}`);
  if (type === 's' && !(Number(value) < book.strings.length)) bad(`holds the shared text ${value} of ${book.strings.length}`);
  if (type === 'inlineStr' && (!inline || formula)) bad('is an inline text without one, or with a formula');
  if (inline) validateSpace(parts, `${sheet} ${address}`, inline);
  if (formula) validateFormula(bad, formula, value);
  const text = type === 's' ? book.strings[Number(value)] : inline ? richText(inline) : value === undefined ? undefined : type === 'str' ? unescaped(value) : value;
  return { address, type, value: text, formula: formula?.text };
}

function validateFormula(bad: (what: string) => void, { text, attributes }: Element, value: string | undefined): void {
  const withoutTexts = text.replace(/"[^"]*"/g, '');
  if (/^\s*=/.test(text)) bad('has a formula that starts with =');
  if (/\[@/.test(withoutTexts)) bad('writes [@…] where files hold [[#This Row],[…]]');
  if (/(^|[^\w.])JW\./i.test(withoutTexts)) bad('writes JW. where files hold _xldudf_JW_');
  if (text.length > 8192) bad(`has a formula of ${text.length} characters`);
  if (text === '' && attributes.t !== 'shared' && attributes.t !== 'dataTable') bad('has an empty formula');
  if (value === undefined) bad('has a formula without a stored value');
}

function validateDimension(parts: Parts, sheet: string, root: Element, cells: ReadonlyMap<string, SheetCell>): void {
  const ref = child(root, 'dimension')?.attributes.ref;
  if (ref === undefined) return;
  const box = boxOf(ref);
  for (const { address, value, formula } of cells.values()) if ((value !== undefined || formula !== undefined) && !meet(boxOf(address), box)) return parts.bad(sheet, `${address} stands outside of the dimension ${ref}`);
}

function validateMerges(bad: (what: string) => void, root: Element): void {
  const merges = children(child(root, 'mergeCells'), 'mergeCell').map(({ attributes }) => attributes.ref ?? '');
  merges.forEach((one, index) => merges.slice(index + 1).forEach((two) => { if (meet(boxOf(one), boxOf(two))) bad(`merged cells ${one} and ${two} overlap`); }));
}

function validateConditions(bad: (what: string) => void, root: Element, formats: number): void {
  const rules = children(root, 'conditionalFormatting').flatMap((each) => children(each, 'cfRule'));
  for (const { attributes } of rules) {
    if (attributes.dxfId !== undefined && Number(attributes.dxfId) >= formats) bad(`a rule has the format ${attributes.dxfId} of ${formats}`);
    if (attributes.type === 'containsText' && (!attributes.text || !attributes.operator)) bad('a containsText rule lacks its text or operator');
  }
  const priorities = rules.map(({ attributes }) => attributes.priority);
  if (new Set(priorities).size !== priorities.length) bad('two rules have one priority');
}

function validateRule(bad: (what: string) => void, { attributes, children: [first] }: Element): void {
  if (attributes.type === 'list' && first?.name === 'formula1' && /^"/.test(first.text) && first.text.length - 2 > 255) bad('a list of choices has more than 255 characters');
  for (const [key, most] of [['errorTitle', 32], ['promptTitle', 32], ['error', 225], ['prompt', 255]] as const) {
    if ((attributes[key]?.length ?? 0) > most) bad(`${key} has more than ${most} characters`);
  }
}
