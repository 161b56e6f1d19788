import { type HandMade, handMade, handMadeParts, styles, zipped } from '../../support/hand-made-workbook';
import { validateWorkbook } from '../../support/validate-xlsx';

const table = (change: (xml: string) => string = (xml) => xml): string => change('<table id="1" name="t" displayName="cables" ref="A1:B3"><autoFilter ref="A1:B3"/><tableColumns count="2"><tableColumn id="1" name="ref"/><tableColumn id="2" name="double"><calculatedColumnFormula>LEN(cables[[#This Row],[ref]])</calculatedColumnFormula></tableColumn></tableColumns></table>');
const rows = '<row r="1" spans="1:2"><c r="A1" t="inlineStr"><is><t>ref</t></is></c><c r="B1" t="s"><v>0</v></c></row>'
  + '<row r="2"><c r="A2" t="s"><v>1</v></c><c r="B2"><f>LEN(cables[[#This Row],[ref]])</f><v>3</v></c></row><row r="3"><c r="A3" t="s"><v>1</v></c><c r="B3"><f>LEN(cables[[#This Row],[ref]])</f><v>3</v></c></row>';
const good: HandMade = { sheets: { S: rows }, strings: ['<si><t>double</t></si>', '<si><t>C-1</t></si>'], tables: [{ sheet: 'S', xml: table() }], names: '<definedName name="Vn">S!$A$1</definedName>' };
const withRows = (from: string, to: string): HandMade => ({ ...good, sheets: { S: rows.replace(from, to) } });
const after = (more: string): HandMade => ({ ...good, sheets: { S: `<?xml version="1.0"?><worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships"><sheetData>${rows}</sheetData>${more}<tableParts count="1"><tablePart r:id="rId1"/></tableParts></worksheet>` } });
const withTable = (from: string, to: string): HandMade => ({ ...good, tables: [{ sheet: 'S', xml: table((xml) => xml.replace(from, to)) }] });
const part = (name: string, text: string | null): HandMade => ({ ...good, parts: { [name]: text } });
const made = handMadeParts(good);
const textOf = (name: string): string => made[name] as string;

test('a sound workbook has no fault', () => {
  expect(validateWorkbook(handMade(good))).toEqual([]);
  expect(validateWorkbook(handMade(after('<mergeCells count="1"><mergeCell ref="D1:E1"/></mergeCells>')))).toEqual([]);
});

test.each<[string, HandMade, RegExp]>([
  ['XML', part('xl/styles.xml', styles.replace('</fonts>', '')), /styles.xml: not well-formed/],
  ['type missing', part('[Content_Types].xml', textOf('[Content_Types].xml').replace(/<Override PartName="\/xl\/styles.xml"[^>]*>/, '')), /styles.xml: has no content type/],
  ['type of nothing', part('xl/sharedStrings.xml', null), /type of a missing part/],
  ['unreached', { ...good, parts: { 'xl/lost.xml': '<a/>' } }, /lost.xml: is reached by no relationship/],
  ['relationship undeclared', after('<drawing r:id="rId8"/>'), /rId8 has no relationship/],
  ['sheet name', { ...good, sheets: { S: rows, 'a/b': '' } }, /illegal sheet name/],
  ['name twice', { ...good, names: `${good.names}<definedName name="VN">1</definedName>` }, /defined twice/],
  ['name like a cell', { ...good, names: '<definedName name="IK3">1</definedName>' }, /illegal name IK3/],
  ['name with =', { ...good, names: '<definedName name="a">=1</definedName>' }, /starts with =/],
  ['name of no sheet', { ...good, names: '<definedName name="a">Gone!$A$1</definedName>' }, /refers to no sheet gone/],
  ['print area', { ...good, names: '<definedName name="_xlnm.Print_Area" localSheetId="0">S!$A1:$B3</definedName>' }, /not absolute/],
  ['style count', part('xl/styles.xml', styles.replace('cellXfs count="3"', 'cellXfs count="4"')), /cellXfs count 4 is not 3/],
  ['font', part('xl/styles.xml', styles.replace('<name val="Calibri"/>', '')), /font has no name/],
  ['font out of range', part('xl/styles.xml', styles.replace('numFmtId="164" fontId="0"', 'numFmtId="164" fontId="5"')), /fontId 5 is out of range/],
  ['space', { ...good, strings: ['<si><t>double</t></si>', '<si><t> C-1</t></si>'] }, /needs xml:space/],
  ['order of the sheet', after('<pageMargins left="0"/><mergeCells count="1"><mergeCell ref="D1:E1"/></mergeCells>'), /<mergeCells> after <pageMargins>/],
  ['order of rows', withRows('<row r="3">', '<row r="2">'), /row 2 is out of order/],
  ['order of cells', withRows('<c r="A2" t="s"><v>1</v></c><c r="B2">', '<c r="C2" t="s"><v>1</v></c><c r="B2">'), /B2 is out of order/],
  ['spans', withRows('spans="1:2"', 'spans="1:1"'), /B1 stands outside of its row's spans/],
  ['format', withRows('<c r="A2"', '<c r="A2" s="3"'), /A2 has the format 3 of 3/],
  ['number', withRows('<v>3</v>', '<v>NaN</v>'), /holds the number NaN/],
  ['shared text', withRows('<c r="A2" t="s"><v>1</v>', '<c r="A2" t="s"><v>2</v>'), /shared text 2 of 2/],
  ['truth', withRows('<c r="A2" t="s"><v>1</v>', '<c r="A2" t="b"><v>x</v>'), /truth value x/],
  ['error', withRows('<c r="A2" t="s"><v>1</v>', '<c r="A2" t="e"><v>#CYCLE!</v>'), /holds the error #CYCLE!/],
  ['elements of a cell', withRows('<f>LEN(cables[[#This Row],[ref]])</f><v>3</v>', '<v>3</v><f>LEN(cables[[#This Row],[ref]])</f>'), /elements out of order/],
  ['formula with =', withRows('<f>LEN', '<f>=LEN'), /starts with =/],
  ['typed form', withRows('<f>LEN(cables[[#This Row],[ref]])', '<f>JW.CABLE_K([@ref])'), /JW. where files hold/],
  ['formula without value', withRows('</f><v>3</v>', '</f>'), /without a stored value/],
  ['metadata', withRows('<c r="A2"', '<c r="A2" cm="1"'), /cell metadata, the workbook has none/],
  ['merges', after('<mergeCells count="2"><mergeCell ref="D1:E1"/><mergeCell ref="E1:F1"/></mergeCells>'), /overlap/],
  ['merge in a table', after('<mergeCells count="1"><mergeCell ref="A2:A3"/></mergeCells>'), /merged cells A2:A3 inside/],
  ['rules', after('<conditionalFormatting sqref="A1"><cfRule type="cellIs" dxfId="0" priority="1"/><cfRule type="containsText" priority="1"/></conditionalFormatting>'), /format 0 of 0[^]*lacks its text[^]*one priority/],
  ['choices', after(`<dataValidations count="1"><dataValidation type="list" promptTitle="${'x'.repeat(33)}" sqref="A1"><formula1>"${'a,'.repeat(130)}"</formula1></dataValidation></dataValidations>`), /255 characters[^]*promptTitle has more than 32/],
  ['dimension', { ...good, sheets: { S: `<?xml version="1.0"?><worksheet xmlns="m"><dimension ref="A1:A3"/><sheetData>${rows}</sheetData></worksheet>` }, tables: [] }, /stands outside of the dimension/],
  ['heading', withTable('name="ref"', 'name="Ref"'), /heading "ref" is not the column's name "Ref"/],
  ['heading no text', withRows('<c r="B1" t="s"><v>0</v></c>', '<c r="B1"><v>0</v></c>'), /heading B1 is no text/],
  ['columns', withTable('ref="A1:B3"', 'ref="A1:C3"'), /2 columns in A1:C3/],
  ['no data', withTable('ref="A1:B3"', 'ref="A1:B1"'), /has no row of data/],
  ['column twice', withTable('name="double"', 'name="REF"'), /two columns have one name/],
  ['column formula', withTable('LEN(', 'LEN(1+'), /B2 is not the formula of its column/],
  ['table named as a name', { ...good, names: '<definedName name="Cables">1</definedName>' }, /cables is also a defined name/],
  ['two tables of one id', { ...good, tables: [{ sheet: 'S', xml: table() }, { sheet: 'S', xml: table((xml) => xml.replaceAll('A1:B3', 'D1:E3').replace('cables"', 'more"')) }] }, /two tables have one id/],
  ['chart', { ...good, parts: { 'xl/charts/chart1.xml': '<c:chartSpace xmlns:c="c"><c:chart><c:legend/><c:plotArea><c:valAx><c:scaling><c:max val="9"/><c:logBase val="10"/><c:min val="0"/></c:scaling></c:valAx><c:f>Gone!$A$1</c:f></c:plotArea></c:chart></c:chartSpace>' } }, /legend before plotArea[^]*refers to no sheet[^]*order logBase[^]*not above 0/],
])('%s', (_, what, fault) => expect(validateWorkbook(zipped(handMadeParts(what))).join('\n')).toMatch(fault));
