import { type WorkbookPackage, openPackage } from './package';
import { quoted, refuse } from './refusal';
import { readSharedStrings } from './shared-strings';
import { type CellFormat, readStyles } from './styles';
import { type TableFacts, readTable } from './tables';
import { type XmlElement, childNamed, childrenNamed, parseXml, relationshipId, truth } from './xml/tree';

/** A sheet as the workbook lists it. Only kind 'worksheet' has cells. */
export interface SheetFacts {
  readonly name: string;
  readonly part: string;
  readonly state: 'visible' | 'hidden' | 'veryHidden';
  readonly kind: 'worksheet' | 'chartsheet' | 'dialogsheet' | 'macrosheet';
}

/** A defined name: its text in the form of the file, without `=`. `sheet` is the one it belongs to, if not the workbook. */
export interface DefinedName {
  readonly name: string;
  readonly text: string;
  readonly sheet: string | undefined;
  readonly hidden: boolean;
}

/** What a workbook is made of, and what its reader ought to know before trusting or changing it. */
export interface WorkbookFacts {
  readonly sheets: readonly SheetFacts[];
  readonly names: readonly DefinedName[];
  readonly tables: readonly TableFacts[];
  /** Days count from 1904 instead of 1900. */
  readonly date1904: boolean;
  /** The strict dialect of the format (ISO/IEC 29500 Strict). */
  readonly strict: boolean;
  readonly macros: boolean;
  /** A digital signature, which any change makes void. */
  readonly signed: boolean;
  /** Number of other workbooks it refers to. */
  readonly externalLinks: number;
  /** Sheets cannot be added, renamed or removed in a spreadsheet program without a password or consent. */
  readonly structureProtected: boolean;
  /** The program that wrote it recalculates at loading, or only when asked. */
  readonly calculation: 'auto' | 'autoNoTable' | 'manual';
  /** Computes with all digits; if false, with those that the cells show. */
  readonly fullPrecision: boolean;
  /** Circular references are meant, and iterated. */
  readonly iterative: boolean;
}

/** A workbook that is open for reading: its parts, facts, texts and styles. */
export interface OpenWorkbook {
  readonly package: WorkbookPackage;
  readonly part: string;
  readonly facts: WorkbookFacts;
  readonly strings: readonly string[];
  readonly styles: readonly CellFormat[];
}

const SHEET_KINDS: Readonly<Record<string, SheetFacts['kind']>> = { worksheet: 'worksheet', chartsheet: 'chartsheet', dialogsheet: 'dialogsheet', xlMacrosheet: 'macrosheet', xlIntlMacrosheet: 'macrosheet' };
const STRICT = 'http://purl.oclc.org/ooxml/spreadsheetml/main';

/** Opens a workbook file: .xlsx, .xlsm, .xltx or .xltm in either dialect; everything else is refused in words. */
export function openWorkbook(bytes: Uint8Array): OpenWorkbook {
  const parts = openPackage(bytes);
  const part = parts.related('', 'officeDocument') ?? refuse('The file is a zip, but no workbook: it names no main part.');
  judgeKind(parts, part);
  const root = parseXml(parts.text(part), part);
  if (root.name !== 'workbook') refuse(`The file is no workbook: its main part is ${quoted(root.name)}.`);
  const sheets = readSheets(parts, part, root);
  const stringsPart = parts.related(part, 'sharedStrings');
  const stylesPart = parts.related(part, 'styles');
  return {
    package: parts, part, facts: readFacts(parts, part, root, sheets),
    strings: stringsPart === undefined ? [] : readSharedStrings(parts.text(stringsPart), stringsPart),
    styles: stylesPart === undefined ? [] : readStyles(parseXml(parts.text(stylesPart), stylesPart)),
  };
}

function judgeKind(parts: WorkbookPackage, part: string): void {
  const type = parts.contentType(part) ?? '';
  if (/sheet\.binary/.test(type) || /\.bin$/i.test(part)) refuse('The file is a binary workbook (.xlsb). Save it as .xlsx, then open it again.');
  if (/wordprocessingml|presentationml/.test(type)) refuse('The file is a text document or a presentation, not a workbook.');
}

function readSheets(parts: WorkbookPackage, part: string, root: XmlElement): SheetFacts[] {
  const links = new Map(parts.relationships(part).map((link) => [link.id, link]));
  const seen = new Set<string>();
  const sheets = childrenNamed(childNamed(root, 'sheets'), 'sheet').map((element): SheetFacts => {
    const name = element.attributes.get('name') ?? refuse('The file is damaged: a sheet has no name.');
    if (seen.has(name.toLowerCase())) refuse(`The file is damaged: two sheets are named ${quoted(name)}.`);
    seen.add(name.toLowerCase());
    const link = links.get(relationshipId(element) ?? '');
    if (link?.part === undefined) refuse(`The file is damaged: nothing tells where the sheet ${quoted(name)} stands.`);
    if (!parts.has(link.part)) refuse(`The file is damaged: ${quoted(link.part)}, the sheet ${quoted(name)}, is missing.`);
    const state = element.attributes.get('state');
    return { name, part: link.part, state: state === 'hidden' || state === 'veryHidden' ? state : 'visible', kind: SHEET_KINDS[link.kind] ?? refuse(`The sheet ${quoted(name)} is of a kind that is not known here.`) };
  });
  return sheets.length > 0 ? sheets : refuse('The file is damaged: the workbook has no sheet.');
}

function readFacts(parts: WorkbookPackage, part: string, root: XmlElement, sheets: readonly SheetFacts[]): WorkbookFacts {
  const protection = childNamed(root, 'workbookProtection');
  const calculation = childNamed(root, 'calcPr')?.attributes.get('calcMode');
  return {
    sheets,
    names: readNames(root, sheets),
    tables: sheets.flatMap((sheet) => parts.relationships(sheet.part).filter((link) => link.kind === 'table').map((link) => {
      const table = link.part ?? refuse(`The file is damaged: a table of ${quoted(sheet.name)} leads out of the file.`);
      return readTable(parseXml(parts.text(table), table), table, sheet.name);
    })),
    date1904: truth(childNamed(root, 'workbookPr'), 'date1904'),
    strict: [...root.attributes.values()].includes(STRICT),
    macros: parts.relationships(part).some((link) => link.kind === 'vbaProject') || sheets.some((sheet) => sheet.kind === 'macrosheet'),
    signed: parts.relationships('').some((link) => link.kind === 'origin') || parts.parts.some((name) => /^_xmlsignatures\//i.test(name)),
    externalLinks: parts.relationships(part).filter((link) => link.kind === 'externalLink').length,
    structureProtected: truth(protection, 'lockStructure') || truth(protection, 'lockWindows'),
    calculation: calculation === 'manual' || calculation === 'autoNoTable' ? calculation : 'auto',
    fullPrecision: !/^(0|false|off)$/.test(childNamed(root, 'calcPr')?.attributes.get('fullPrecision') ?? ''),
    iterative: truth(childNamed(root, 'calcPr'), 'iterate'),
  };
}

function readNames(root: XmlElement, sheets: readonly SheetFacts[]): DefinedName[] {
  return childrenNamed(childNamed(root, 'definedNames'), 'definedName').map((element) => {
    const name = element.attributes.get('name') ?? refuse('The file is damaged: a defined name lacks its name.');
    const scope = element.attributes.get('localSheetId');
    const sheet = scope === undefined ? undefined : sheets[Number(scope)] ?? refuse(`The file is damaged: the name ${quoted(name)} belongs to no sheet.`);
    return { name, text: element.text.trim(), sheet: sheet?.name, hidden: truth(element, 'hidden') };
  });
}
