import { type Zippable, strToU8, zipSync } from 'fflate';

const MAIN = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
const OFFICE = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
const PACKAGE = 'http://schemas.openxmlformats.org/package/2006';
export const XML_HEAD = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';

export interface HandMade {
  /** Content of <sheetData>, or a whole worksheet part, by sheet name. */
  readonly sheets: Readonly<Record<string, string>>;
  readonly names?: string;
  readonly strings?: readonly string[];
  readonly tables?: readonly { sheet: string; xml: string }[];
  readonly workbookPr?: string;
  /** Parts that take the place of the ones made here, stand beside them, or (null) are left out. */
  readonly parts?: Readonly<Record<string, string | Uint8Array | null>>;
  /** How a relationship names a sheet; the folder's own way by default. */
  readonly target?: (file: string) => string;
}

export const styles = `${XML_HEAD}<styleSheet xmlns="${MAIN}"><numFmts count="1"><numFmt numFmtId="164" formatCode="0.00&quot; kA&quot;"/></numFmts>`
  + '<fonts count="1"><font><sz val="11"/><name val="Calibri"/></font></fonts><fills count="2"><fill><patternFill patternType="none"/></fill><fill><patternFill patternType="gray125"/></fill></fills>'
  + '<borders count="1"><border><left/><right/><top/><bottom/><diagonal/></border></borders><cellStyleXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/></cellStyleXfs>'
  + '<cellXfs count="3"><xf numFmtId="0" fontId="0" fillId="0" borderId="0" xfId="0"/><xf numFmtId="164" fontId="0" fillId="0" borderId="0" xfId="0" applyNumberFormat="1"/>'
  + '<xf numFmtId="0" fontId="0" fillId="0" borderId="0" xfId="0" applyProtection="1"><protection locked="0"/></xf></cellXfs><cellStyles count="1"><cellStyle name="Normal" xfId="0" builtinId="0"/></cellStyles></styleSheet>';

/** The parts of a small workbook, written out by hand so that every oddity can be put in. */
export function handMadeParts({ sheets, names, strings, tables = [], workbookPr = '', parts = {}, target = (file) => `worksheets/${file}` }: HandMade): Record<string, string | Uint8Array> {
  const list = Object.entries(sheets);
  const relationships = (links: string[]): string => `${XML_HEAD}<Relationships xmlns="${PACKAGE}/relationships">${links.join('')}</Relationships>`;
  const link = (id: string, kind: string, to: string): string => `<Relationship Id="${id}" Type="${OFFICE}/${kind}" Target="${to}"/>`;
  const type = (part: string, kind: string): string => `<Override PartName="/${part}" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.${kind}+xml"/>`;
  const made: Record<string, string | Uint8Array | null> = {
    '[Content_Types].xml': `${XML_HEAD}<Types xmlns="${PACKAGE}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>`
      + '<Default Extension="xml" ContentType="application/xml"/>' + type('xl/workbook.xml', 'sheet.main') + list.map((_, index) => type(`xl/worksheets/sheet${index + 1}.xml`, 'worksheet')).join('')
      + type('xl/styles.xml', 'styles') + (strings ? type('xl/sharedStrings.xml', 'sharedStrings') : '') + tables.map((_, index) => type(`xl/tables/table${index + 1}.xml`, 'table')).join('') + '</Types>',
    '_rels/.rels': relationships([link('rId1', 'officeDocument', 'xl/workbook.xml')]),
    'xl/workbook.xml': `${XML_HEAD}<workbook xmlns="${MAIN}" xmlns:r="${OFFICE}">${workbookPr}<sheets>${list.map(([name], index) => `<sheet name="${name}" sheetId="${index + 1}" r:id="rId${index + 1}"/>`).join('')}</sheets>${names ? `<definedNames>${names}</definedNames>` : ''}</workbook>`,
    'xl/_rels/workbook.xml.rels': relationships([...list.map((_, index) => link(`rId${index + 1}`, 'worksheet', target(`sheet${index + 1}.xml`))), link('rId90', 'styles', 'styles.xml'), ...(strings ? [link('rId91', 'sharedStrings', 'sharedStrings.xml')] : [])]),
    'xl/styles.xml': styles,
  };
  list.forEach(([name, content], index) => {
    const own = tables.map((table, number) => ({ ...table, number })).filter((table) => table.sheet === name);
    const tableParts = own.length ? `<tableParts count="${own.length}">${own.map(({ number }) => `<tablePart r:id="rId${number + 1}"/>`).join('')}</tableParts>` : '';
    made[`xl/worksheets/sheet${index + 1}.xml`] = content.startsWith('<?xml') ? content : `${XML_HEAD}<worksheet xmlns="${MAIN}" xmlns:r="${OFFICE}"><sheetData>${content}</sheetData>${tableParts}</worksheet>`;
    if (own.length) made[`xl/worksheets/_rels/sheet${index + 1}.xml.rels`] = relationships(own.map(({ number }) => link(`rId${number + 1}`, 'table', `../tables/table${number + 1}.xml`)));
  });
  tables.forEach(({ xml }, index) => { made[`xl/tables/table${index + 1}.xml`] = `${XML_HEAD}${xml.replace('<table ', `<table xmlns="${MAIN}" `)}`; });
  if (strings) made['xl/sharedStrings.xml'] = `${XML_HEAD}<sst xmlns="${MAIN}">${strings.join('')}</sst>`;
  return Object.fromEntries(Object.entries({ ...made, ...parts }).filter((entry): entry is [string, string | Uint8Array] => entry[1] !== null));
}

export const zipped = (parts: Readonly<Record<string, string | Uint8Array>>, options: Parameters<typeof zipSync>[1] = {}): Uint8Array =>
  zipSync(Object.fromEntries(Object.entries(parts).map(([name, content]) => [name, typeof content === 'string' ? strToU8(content) : content])) as Zippable, { mtime: new Date(2024, 4, 1, 12, 0, 0), ...options });

export const handMade = (what: HandMade): Uint8Array => zipped(handMadeParts(what));
