import { parseXml } from '../../src/sheet/xlsx/xml/tree';
import { colorReader } from '../../src/workbench/open/colors';
import { columnPixels, rowPixels } from '../../src/workbench/open/layout';
import { gridFormat } from '../../src/workbench/open/number-formats';
import { number, opened, row, text } from './support/opened';

const color = (attributes: string) => colorReader(undefined)(parseXml(`<color ${attributes}/>`, 'test'));

// Tints are worked on the lightness of the colour (ECMA-376 Part 1, 18.8.19); the shades are those of the Office theme.
it.each([
  ['rgb="FF34495A"', '#34495a'], ['indexed="10"', '#ff0000'], ['indexed="64"', undefined], ['auto="1"', undefined],
  ['theme="0"', '#ffffff'], ['theme="1"', '#000000'], ['theme="4"', '#4472c4'],
  ['theme="4" tint="0.79998168889431442"', '#d9e1f2'], ['theme="4" tint="-0.249977111117893"', '#2f5597'], ['theme="0" tint="-0.14999847407452621"', '#d9d9d9'],
])('colour %s', (attributes, shown) => {
  const got = color(attributes);
  if (shown === undefined) return expect(got).toBeUndefined();
  const parts = (hex: string) => [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16));
  // Excel works lightness in coarse whole steps; two of 255 either way are its rounding.
  parts(got!).forEach((part, place) => expect(Math.abs(part - parts(shown)[place]!)).toBeLessThanOrEqual(2));
});

it.each([[0, 'General', undefined], [2, undefined, '0.00'], [164, '0.00" kA"', '0.00" kA"'], [164, '[Red]#,##0_);\\(#,##0\\)', '#,##0;\\(#,##0\\)'], [164, '[$€-407] 0.00', '"€" 0.00'], [164, '0.00E+00', '0.00e']])(
  'number format %s %s', (id, code, format) => expect(gridFormat(id, code, () => true)).toBe(format),
);

it('a format that the grid cannot show is left away, not shown wrong', () => {
  expect(gridFormat(164, '# ?/?', () => false)).toBeUndefined();
});

it('widths and heights in pixels, as Excel draws them', () => {
  // 8.43 characters shown are stored as 9.140625 and drawn 64 pixels wide; 15 points are 20 pixels.
  expect(columnPixels(9.140625)).toBe(64);
  expect(rowPixels(15)).toBe(20);
});

const HEAD = '<?xml version="1.0"?><worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main">';
const STYLES = `<?xml version="1.0"?><styleSheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><numFmts count="1"><numFmt numFmtId="164" formatCode="0.00&quot; kA&quot;"/></numFmts>
<fonts count="2"><font><sz val="11"/></font><font><b/><sz val="14"/><color rgb="FFFFFFFF"/></font></fonts>
<fills count="3"><fill><patternFill patternType="none"/></fill><fill><patternFill patternType="gray125"/></fill><fill><patternFill patternType="solid"><fgColor rgb="FF34495A"/></patternFill></fill></fills>
<borders count="2"><border/><border><top style="medium"><color rgb="FF112233"/></top></border></borders>
<cellXfs count="4"><xf/><xf fontId="1" fillId="2" borderId="1"><alignment horizontal="center" wrapText="1"/></xf><xf numFmtId="164"/><xf numFmtId="49"/></cellXfs>
<dxfs count="2"><dxf><fill><patternFill><bgColor rgb="FFFFC7CE"/></patternFill></fill></dxf><dxf><font><b/></font></dxf></dxfs></styleSheet>`;

const looked = opened({
  names: '<definedName name="Metals">S!$F$1:$F$2</definedName>',
  parts: { 'xl/styles.xml': STYLES },
  sheets: {
    S: `${HEAD}<sheetPr><tabColor rgb="FF00FF00"/></sheetPr><sheetViews><sheetView showGridLines="0"><pane xSplit="1" ySplit="2" topLeftCell="B3" state="frozen"/></sheetView></sheetViews>
<cols><col min="2" max="3" width="20.7109375" customWidth="1"/><col min="4" max="4" width="9" hidden="1"/></cols>
<sheetData>${row(1, text('A1', 'head', ' s="1"'), number('B1', 63, ' s="2"'), number('C1', 5, ' s="3"'), text('F1', 'Cu')).replace('r="1"', 'r="1" ht="30" customHeight="1"')}${row(2, text('A2', 'FAIL'), number('B2', 7), text('F2', 'Al'))}${row(3, text('A3', 'pass'), number('B3', 3))}</sheetData>
<mergeCells count="1"><mergeCell ref="G1:H2"/></mergeCells>
<conditionalFormatting sqref="A2:A3"><cfRule type="cellIs" dxfId="0" priority="2" operator="equal"><formula>"FAIL"</formula></cfRule></conditionalFormatting>
<conditionalFormatting sqref="B2 B3"><cfRule type="expression" dxfId="1" priority="1"><formula>B2&gt;5</formula></cfRule></conditionalFormatting>
<conditionalFormatting sqref="C1"><cfRule type="iconSet" priority="3"><iconSet><cfvo type="num" val="0"/></iconSet></cfRule></conditionalFormatting>
<dataValidations count="4"><dataValidation type="list" sqref="A5" showErrorMessage="1"><formula1>"Cu,Al"</formula1></dataValidation><dataValidation type="list" sqref="A6"><formula1>Metals</formula1></dataValidation><dataValidation type="whole" sqref="B5 B6" operator="between" showErrorMessage="1"><formula1>1</formula1><formula2>24</formula2></dataValidation><dataValidation type="list" sqref="A7"><formula1>INDIRECT("x")</formula1></dataValidation></dataValidations></worksheet>`,
  },
});
const { getters } = looked.model;
const at = looked.position;
const sheetId = at('A1').sheetId;

it('cells look as in the file', () => {
  expect(getters.getCell(at('A1'))!.style).toMatchObject({ bold: true, fontSize: 14, textColor: '#ffffff', fillColor: '#34495a', align: 'center', wrapping: 'wrap' });
  expect(getters.getCellBorder(at('A1'))).toMatchObject({ top: { style: 'medium', color: '#112233' } });
  expect(getters.getEvaluatedCell(at('B1')).formattedValue).toBe('63.00 kA');
});

it('a number in a cell with a text format stays a number', () => {
  expect(getters.getEvaluatedCell(at('C1')).value).toBe(5);
});

it('widths, heights, frozen panes, hidden columns, merged cells, grid lines', () => {
  expect(getters.getColSize(sheetId, 1)).toBe(145);
  expect(getters.getRowSize(sheetId, 0)).toBe(40);
  expect(getters.getPaneDivisions(sheetId)).toEqual({ xSplit: 1, ySplit: 2 });
  expect(getters.isColHidden(sheetId, 3)).toBe(true);
  expect(getters.isInMerge(at('H2'))).toBe(true);
  expect(getters.getGridLinesVisibility(sheetId)).toBe(false);
});

it('rules for formats fire as in Excel, each place by its own references', () => {
  const style = (address: string) => getters.getCellConditionalFormatStyle(at(address)) ?? {};
  expect(['A2', 'A3', 'B2', 'B3'].map(style)).toEqual([{ fillColor: '#ffc7ce' }, {}, { bold: true }, {}]);
  looked.type('A3', 'FAIL');
  looked.type('B3', '6');
  expect(['A3', 'B3'].map(style)).toEqual([{ fillColor: '#ffc7ce' }, { bold: true }]);
});

it('rules for input: lists to choose from, limits', () => {
  const rule = (address: string) => getters.getValidationRuleForCell(at(address));
  expect(rule('A5')).toMatchObject({ criterion: { type: 'isValueInList', values: ['Cu', 'Al'] }, isBlocking: true });
  expect(rule('A6')!.criterion.type).toBe('isValueInRange');
  looked.type('B6', '3');
  expect(getters.isDataValidationInvalid(at('B6'))).toBe(false);
  looked.type('B6', '2.5');
  expect(getters.isDataValidationInvalid(at('B6'))).toBe(true);
  looked.type('B6', '25');
  expect(getters.isDataValidationInvalid(at('B6'))).toBe(true);
});

it('what is not drawn or checked is said', () => {
  expect(looked.file.notices.join(' ')).toMatch(/1 conditional format.*1 input rule/);
});
