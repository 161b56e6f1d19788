/** A scatter chart as the drawing parts of a workbook hold it. */
export interface Series {
  name: string;
  /** Absolute references, such as `'Curves'!$A$8:$A$20`. */
  x: string;
  y: string;
  colour: string;
  dashed?: true;
  /** Points marked, no line. */
  points?: true;
}

export interface Axis {
  title: string;
  min: number;
  max: number;
  /** Even divisions; logarithmic without it. */
  linear?: true;
}

export interface Chart {
  title: string;
  /** First and last column and row that it covers, from 0. */
  at: { column: number; row: number; toColumn: number; toRow: number };
  x: Axis;
  y: Axis;
  series: readonly Series[];
}

export const escapeXml = (text: string): string => text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;').replace(/"/g, '&quot;');

const NAMESPACES =
  'xmlns:c="http://schemas.openxmlformats.org/drawingml/2006/chart" xmlns:a="http://schemas.openxmlformats.org/drawingml/2006/main" xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships"';

const richText = (text: string, size: number, bold: boolean): string => {
  const run = `sz="${size}" b="${bold ? 1 : 0}"`;
  return `<c:tx><c:rich><a:bodyPr/><a:lstStyle/><a:p><a:pPr><a:defRPr ${run}/></a:pPr><a:r><a:rPr lang="en-GB" ${run}/><a:t>${escapeXml(text)}</a:t></a:r></a:p></c:rich></c:tx><c:overlay val="0"/>`;
};

const line = (width: number, rgb: string, dashed = false): string =>
  `<c:spPr><a:ln w="${width}"><a:solidFill><a:srgbClr val="${rgb}"/></a:solidFill>${dashed ? '<a:prstDash val="dash"/>' : ''}</a:ln></c:spPr>`;
const noLine = '<c:spPr><a:ln w="19050"><a:noFill/></a:ln></c:spPr>';

const numbers = (tag: 'xVal' | 'yVal', reference: string, cached: readonly (number | undefined)[]): string => {
  const points = cached.map((value, i) => (value === undefined ? '' : `<c:pt idx="${i}"><c:v>${value}</c:v></c:pt>`)).join('');
  return `<c:${tag}><c:numRef><c:f>${escapeXml(reference)}</c:f><c:numCache><c:formatCode>General</c:formatCode><c:ptCount val="${cached.length}"/>${points}</c:numCache></c:numRef></c:${tag}>`;
};

const marker = ({ points, colour }: Series): string =>
  points
    ? `<c:marker><c:symbol val="circle"/><c:size val="7"/><c:spPr><a:solidFill><a:srgbClr val="${colour}"/></a:solidFill></c:spPr></c:marker>`
    : '<c:marker><c:symbol val="none"/></c:marker>';

const axis = (id: number, crosses: number, position: 'b' | 'l', { title, min, max, linear }: Axis): string =>
  `<c:valAx><c:axId val="${id}"/><c:scaling>${linear ? '' : '<c:logBase val="10"/>'}<c:orientation val="minMax"/><c:max val="${max}"/><c:min val="${min}"/></c:scaling>` +
  `<c:delete val="0"/><c:axPos val="${position}"/><c:majorGridlines>${line(9525, 'B7C0C4')}</c:majorGridlines><c:minorGridlines>${line(6350, 'E6EBED')}</c:minorGridlines>` +
  `<c:title>${richText(title, 1000, false)}</c:title><c:numFmt formatCode="${linear ? '#,##0.##' : max >= 1e6 ? '0E+00' : 'General'}" sourceLinked="0"/><c:majorTickMark val="out"/><c:minorTickMark val="none"/>` +
  `<c:tickLblPos val="low"/><c:crossAx val="${crosses}"/><c:crosses val="min"/><c:crossBetween val="midCat"/></c:valAx>`;

/** The chart part. `valuesOf` gives the stored numbers behind a reference, which stand in the chart until it is redrawn. */
export function chartXml(chart: Chart, valuesOf: (reference: string) => readonly (number | undefined)[]): string {
  const series = chart.series.map((one, i) =>
    `<c:ser><c:idx val="${i}"/><c:order val="${i}"/><c:tx><c:v>${escapeXml(one.name)}</c:v></c:tx>${one.points ? noLine : line(22225, one.colour, one.dashed)}` +
    `${marker(one)}${numbers('xVal', one.x, valuesOf(one.x))}${numbers('yVal', one.y, valuesOf(one.y))}<c:smooth val="0"/></c:ser>`).join('');
  return (
    `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<c:chartSpace ${NAMESPACES}><c:roundedCorners val="0"/><c:chart><c:title>${richText(chart.title, 1200, true)}</c:title>` +
    `<c:autoTitleDeleted val="0"/><c:plotArea><c:layout/><c:scatterChart><c:scatterStyle val="lineMarker"/><c:varyColors val="0"/>${series}<c:axId val="111111"/><c:axId val="222222"/></c:scatterChart>` +
    `${axis(111111, 222222, 'b', chart.x)}${axis(222222, 111111, 'l', chart.y)}</c:plotArea><c:legend><c:legendPos val="b"/><c:overlay val="0"/></c:legend><c:plotVisOnly val="1"/><c:dispBlanksAs val="gap"/></c:chart></c:chartSpace>`
  );
}

const corner = (tag: 'from' | 'to', column: number, row: number): string =>
  `<xdr:${tag}><xdr:col>${column}</xdr:col><xdr:colOff>0</xdr:colOff><xdr:row>${row}</xdr:row><xdr:rowOff>0</xdr:rowOff></xdr:${tag}>`;

/** The drawing part that places charts on a sheet; chart i has the relationship rId(i+1). */
export function drawingXml(charts: readonly Chart[]): string {
  const anchors = charts.map(({ title, at }, i) =>
    `<xdr:twoCellAnchor>${corner('from', at.column, at.row)}${corner('to', at.toColumn, at.toRow)}<xdr:graphicFrame macro=""><xdr:nvGraphicFramePr><xdr:cNvPr id="${i + 2}" name="Chart ${i + 1}" descr="${escapeXml(title)}"/><xdr:cNvGraphicFramePr/></xdr:nvGraphicFramePr>` +
    '<xdr:xfrm><a:off x="0" y="0"/><a:ext cx="0" cy="0"/></xdr:xfrm><a:graphic><a:graphicData uri="http://schemas.openxmlformats.org/drawingml/2006/chart">' +
    `<c:chart xmlns:c="http://schemas.openxmlformats.org/drawingml/2006/chart" xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships" r:id="rId${i + 1}"/></a:graphicData></a:graphic></xdr:graphicFrame><xdr:clientData/></xdr:twoCellAnchor>`).join('');
  return `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<xdr:wsDr xmlns:xdr="http://schemas.openxmlformats.org/drawingml/2006/spreadsheetDrawing" xmlns:a="http://schemas.openxmlformats.org/drawingml/2006/main">${anchors}</xdr:wsDr>`;
}
