import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { type Chart, chartXml, drawingXml, escapeXml } from './chart-xml';
import type { WorkedColumns } from './table';

/**
 * A pass over the parts that exceljs wrote: what it leaves out (calculated columns, charts) and what it writes in a form
 * that Excel would repair at opening.
 */

/** One moment for every entry, so that the same input gives the same bytes. */
const MOMENT = new Date('2026-01-05T00:00:00');

type Parts = Record<string, Uint8Array>;
const text = (parts: Parts, name: string): string => strFromU8(parts[name]!);

const edit = (parts: Parts, matches: RegExp, change: (xml: string, name: string) => string): void => {
  for (const name of Object.keys(parts)) if (matches.test(name)) parts[name] = strToU8(change(text(parts, name), name));
};

function zipped(parts: Parts): Uint8Array {
  const first = ['[Content_Types].xml', '_rels/.rels'];
  const names = [...first, ...Object.keys(parts).filter((name) => !first.includes(name) && !name.endsWith('/'))];
  return zipSync(Object.fromEntries(names.map((name) => [name, parts[name]!])), { level: 6, mtime: MOMENT });
}

/** Repairs what exceljs writes out of order and adds the calculated columns of the tables. */
export function repaired(bytes: Uint8Array, worked: WorkedColumns): Uint8Array {
  const parts: Parts = unzipSync(bytes);
  // Notes must stand before tables in a sheet part.
  edit(parts, /^xl\/worksheets\/sheet\d+\.xml$/, (xml) => uniquePriorities(xml.replace(/(<tableParts[\s\S]*?<\/tableParts>)(<legacyDrawing [^>]*\/>)/, '$2$1')));
  edit(parts, /^xl\/workbook\.xml$/, (xml) =>
    xml
      .replace(/(<definedName name="_xlnm\.Print_Area"[^>]*>)([^<]*)/g, (_, head: string, area: string) => head + area.replace(/\$([A-Z]+)(\d+)/g, '$$$1$$$2'))
      // With an older number Excel recalculates at load, before the add-in is there.
      .replace(/calcId="\d+"/, 'calcId="191029"'));
  edit(parts, /^xl\/tables\/table\d+\.xml$/, (xml) => calculated(xml, worked));
  return zipped(parts);
}

function uniquePriorities(xml: string): string {
  let next = 0;
  return xml.replace(/(<cfRule [^>]*priority=")\d+"/g, (_, head: string) => `${head}${(next += 1)}"`);
}

function calculated(xml: string, worked: WorkedColumns): string {
  const name = / displayName="([^"]*)"/.exec(xml)?.[1] ?? '';
  const formulas = worked.get(name);
  return xml
    .replace(/(<autoFilter ref="[^"]*")>[\s\S]*?<\/autoFilter>/, '$1/>')
    .replace(/ totalsRow(Label|Function)="[^"]*"/g, '')
    .replace('totalsRowShown="1"', 'totalsRowShown="0"')
    .replace(/<tableColumn ([^>]*?)\/>/g, (whole, attributes: string) => {
      const column = unescaped(/name="([^"]*)"/.exec(attributes)![1]!);
      const formula = formulas?.get(column);
      return formula === undefined ? whole : `<tableColumn ${attributes}><calculatedColumnFormula>${escapeXml(formula)}</calculatedColumnFormula></tableColumn>`;
    });
}

const unescaped = (value: string): string =>
  value.replace(/&lt;/g, '<').replace(/&gt;/g, '>').replace(/&quot;/g, '"').replace(/&apos;/g, "'").replace(/&amp;/g, '&');

const RELATIONSHIPS = 'http://schemas.openxmlformats.org/package/2006/relationships';
const OFFICE = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
const relationships = (inner: string): string => `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<Relationships xmlns="${RELATIONSHIPS}">${inner}</Relationships>`;

/** Adds charts to sheets (by the number of their part), with the stored figures as they stand in the workbook. */
export function withCharts(bytes: Uint8Array, charts: ReadonlyMap<number, readonly Chart[]>, valuesOf: (reference: string) => readonly (number | undefined)[]): Uint8Array {
  const parts: Parts = unzipSync(bytes);
  const set = (name: string, xml: string): void => void (parts[name] = strToU8(xml));
  const types: string[] = [];
  let chartNumber = 0;
  let drawingNumber = 0;
  for (const [sheetNumber, list] of charts) {
    drawingNumber += 1;
    const own = list.map((chart) => {
      chartNumber += 1;
      set(`xl/charts/chart${chartNumber}.xml`, chartXml(chart, valuesOf));
      types.push(`<Override PartName="/xl/charts/chart${chartNumber}.xml" ContentType="application/vnd.openxmlformats-officedocument.drawingml.chart+xml"/>`);
      return chartNumber;
    });
    set(`xl/drawings/drawing${drawingNumber}.xml`, drawingXml(list));
    set(`xl/drawings/_rels/drawing${drawingNumber}.xml.rels`, relationships(own.map((n, i) => `<Relationship Id="rId${i + 1}" Type="${OFFICE}/chart" Target="../charts/chart${n}.xml"/>`).join('')));
    types.push(`<Override PartName="/xl/drawings/drawing${drawingNumber}.xml" ContentType="application/vnd.openxmlformats-officedocument.drawing+xml"/>`);
    placeDrawing(parts, set, sheetNumber, drawingNumber);
  }
  set('[Content_Types].xml', text(parts, '[Content_Types].xml').replace('</Types>', `${types.join('')}</Types>`));
  return zipped(parts);
}

function placeDrawing(parts: Parts, set: (name: string, xml: string) => void, sheetNumber: number, drawingNumber: number): void {
  const sheet = `xl/worksheets/sheet${sheetNumber}.xml`;
  const rels = `xl/worksheets/_rels/sheet${sheetNumber}.xml.rels`;
  const id = `rIdDrawing${drawingNumber}`;
  const relationship = `<Relationship Id="${id}" Type="${OFFICE}/drawing" Target="../drawings/drawing${drawingNumber}.xml"/>`;
  set(rels, parts[rels] ? text(parts, rels).replace('</Relationships>', `${relationship}</Relationships>`) : relationships(relationship));
  const xml = text(parts, sheet);
  // Schema order: … headerFooter, drawing, legacyDrawing, …, tableParts.
  const place = xml.search(/<(legacyDrawing|legacyDrawingHF|picture|tableParts|extLst)\b|<\/worksheet>/);
  const withTag = `${xml.slice(0, place)}<drawing r:id="${id}"/>${xml.slice(place)}`;
  set(sheet, /<worksheet[^>]*xmlns:r=/.test(withTag) ? withTag : withTag.replace('<worksheet ', `<worksheet xmlns:r="${OFFICE}" `));
}
