import { type Element, type Parts, child, children, richText } from './parts';

export interface Sheet { readonly name: string; readonly part: string }
export interface Name { readonly name: string; readonly scope: string | undefined; readonly text: string }

/** What the checks of sheets and tables need of the workbook. */
export interface Book {
  readonly sheets: readonly Sheet[];
  readonly names: readonly Name[];
  readonly strings: readonly string[];
  readonly formats: number;
  readonly differentialFormats: number;
}

const ILLEGAL_SHEET = /[\\/?*[\]:]|^'|'$/;
const SHEET_IN_FORMULA = /(?:'((?:[^']|'')+)'|([\p{L}_][\p{L}\p{N}_.]*))!/gu;

/** Sheets, names, styles and shared texts. */
export function validateBook(parts: Parts): Book {
  const part = parts.linked('', 'officeDocument')[0] ?? '';
  const root = parts.tree(part);
  if (root.name !== 'workbook') parts.bad('_rels/.rels', 'leads to no workbook');
  const byId = new Map(parts.links(part).map((link) => [link.id, link.part]));
  const sheets = children(child(root, 'sheets'), 'sheet').map(({ attributes }) => ({ name: attributes.name ?? '', part: byId.get(attributes['r:id'] ?? '') ?? '' }));
  for (const { name } of sheets) if (name.length === 0 || name.length > 31 || ILLEGAL_SHEET.test(name)) parts.bad(part, `illegal sheet name ${name}`);
  if (new Set(sheets.map(({ name }) => name.toLowerCase())).size !== sheets.length) parts.bad(part, 'two sheets have one name');
  const ids = children(child(root, 'sheets'), 'sheet').map(({ attributes }) => attributes.sheetId);
  if (new Set(ids).size !== ids.length) parts.bad(part, 'two sheets have one sheetId');
  const names = validateNames(parts, part, root, sheets);
  const stylesPart = parts.linked(part, 'styles')[0];
  const stringsPart = parts.linked(part, 'sharedStrings')[0];
  return { sheets, names, strings: stringsPart ? validateStrings(parts, stringsPart) : [], ...(stylesPart ? validateStyles(parts, stylesPart) : { formats: 1, differentialFormats: 0 }) };
}

function validateNames(parts: Parts, part: string, root: Element, sheets: readonly Sheet[]): Name[] {
  const names = children(child(root, 'definedNames'), 'definedName').map(({ attributes, text }) => ({ name: attributes.name ?? '', scope: attributes.localSheetId, text }));
  const seen = new Set<string>();
  for (const { name, scope, text } of names) {
    const key = `${name.toLowerCase()}|${scope ?? ''}`;
    if (seen.has(key)) parts.bad(part, `the name ${name} is defined twice`);
    seen.add(key);
    if (!/^(_xlnm\.)?[\p{L}_\\][\p{L}\p{N}_.\\?]*$/u.test(name) || /^[A-Z]{1,3}\d+$/i.test(name) || /^[RC]$/i.test(name)) parts.bad(part, `illegal name ${name}`);
    if (text === '' || text.startsWith('=')) parts.bad(part, `the text of the name ${name} is empty or starts with =`);
    if (scope !== undefined && !sheets[Number(scope)]) parts.bad(part, `the name ${name} belongs to no sheet`);
    const bare = text.replace(/\$[A-Z]+\$\d+|\$\d+|\$[A-Z]+/g, '').replace(/'[^']*'!|[\p{L}\p{N}_.]+!/gu, '');
    if (/^_xlnm\.Print_(Area|Titles)$/.test(name) && /[A-Z0-9]/.test(bare)) parts.bad(part, `the name ${name} is not absolute: ${text}`);
    for (const [, quoted, plain] of text.replace(/"[^"]*"/g, '').matchAll(SHEET_IN_FORMULA)) {
      const wanted = (quoted ?? plain!).replace(/''/g, "'").toLowerCase();
      if (!wanted.includes('[') && !sheets.some((sheet) => sheet.name.toLowerCase() === wanted)) parts.bad(part, `the name ${name} refers to no sheet ${wanted}`);
    }
  }
  return names;
}

function validateStrings(parts: Parts, part: string): string[] {
  return children(parts.tree(part), 'si').map((item) => {
    validateSpace(parts, part, item);
    return richText(item);
  });
}

/** Spaces at the ends of a text are lost unless it says that they are to be kept. */
export function validateSpace(parts: Parts, where: string, element: Element): void {
  for (const each of element.children) {
    if (each.name === 't' && /^\s|\s$|\n/.test(each.text) && each.attributes['xml:space'] !== 'preserve') parts.bad(where, `needs xml:space="preserve": ${JSON.stringify(each.text.slice(0, 30))}`);
    validateSpace(parts, where, each);
  }
}

function validateStyles(parts: Parts, part: string): { formats: number; differentialFormats: number } {
  const root = parts.tree(part);
  const length = (list: string, item: string): number => children(child(root, list), item).length;
  for (const [list, item] of [['numFmts', 'numFmt'], ['fonts', 'font'], ['fills', 'fill'], ['borders', 'border'], ['cellStyleXfs', 'xf'], ['cellXfs', 'xf'], ['dxfs', 'dxf']] as const) {
    const count = child(root, list)?.attributes.count;
    if (count !== undefined && Number(count) !== length(list, item)) parts.bad(part, `${list} count ${count} is not ${length(list, item)}`);
  }
  for (const font of children(child(root, 'fonts'), 'font')) if (!child(font, 'name')) parts.bad(part, 'a font has no name');
  for (const { attributes } of children(child(root, 'cellXfs'), 'xf')) {
    for (const [key, list, item] of [['fontId', 'fonts', 'font'], ['fillId', 'fills', 'fill'], ['borderId', 'borders', 'border'], ['xfId', 'cellStyleXfs', 'xf']] as const) {
      if (Number(attributes[key] ?? 0) >= Math.max(1, length(list, item))) parts.bad(part, `${key} ${attributes[key]} is out of range`);
    }
  }
  return { formats: Math.max(1, length('cellXfs', 'xf')), differentialFormats: length('dxfs', 'dxf') };
}
