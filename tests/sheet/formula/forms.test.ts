import * as fc from 'fast-check';
import { FormulaForms, FormulaRefusal } from '../../../src/sheet/formula/forms';

const forms = new FormulaForms(['CABLE_K', 'NET_RADIAL']);

describe('typed form and file form', () => {
  test.each([
    ['JW.CABLE_K("XLPE","copper")*2', '_xldudf_JW_CABLE_K("XLPE","copper")*2'],
    ['IFERROR(XLOOKUP(A1,B:B,C:C),"JW.CABLE_K(")', 'IFERROR(_xlfn.XLOOKUP(A1,B:B,C:C),"JW.CABLE_K(")'],
    ['SORT(FILTER(A1:A9,A1:A9>0))', '_xlfn._xlws.SORT(_xlfn._xlws.FILTER(A1:A9,A1:A9>0))'],
    ['NETWORKDAYS.INTL(A1,B1)', 'NETWORKDAYS.INTL(A1,B1)'],
    ['LET(x,A1,y,x+1,y*x)', '_xlfn.LET(_xlpm.x,A1,_xlpm.y,_xlpm.x+1,_xlpm.y*_xlpm.x)'],
    ['x+LET(x,x,LAMBDA(z,z+x+w)(2))', 'x+_xlfn.LET(_xlpm.x,x,_xlfn.LAMBDA(_xlpm.z,_xlpm.z+_xlpm.x+w)(2))'],
    ['LET(f,LAMBDA(a,a*2),f(3))', '_xlfn.LET(_xlpm.f,_xlfn.LAMBDA(_xlpm.a,_xlpm.a*2),_xlpm.f(3))'],
    ['SUM(B2#)', 'SUM(_xlfn.ANCHORARRAY(B2))'],
    ["@A1:A9+'My sheet'!$B$2#", "_xlfn.SINGLE(A1:A9)+_xlfn.ANCHORARRAY('My sheet'!$B$2)"],
    ['@(B2#)', '_xlfn.SINGLE((_xlfn.ANCHORARRAY(B2)))'],
    ['@(A1:A3,C1)', '_xlfn.SINGLE((A1:A3,C1))'],
    ['@INDEX(A1:A9,2)^2', '_xlfn.SINGLE(INDEX(A1:A9,2))^2'],
    ['cables[@In]*2', 'cables[[#This Row],[In]]*2'],
    ["cables[@[In, A]:[It''s]]", "cables[[#This Row],[In, A]:[It''s]]"],
    ['SUM(cables[In],cables[#Totals])', 'SUM(cables[In],cables[#Totals])'],
    [' A1 + B1:B2 B2 ', ' A1 + B1:B2 B2 '],
    ['-2^2&"a""b\\"', '-2^2&"a""b\\"'],
    ['{1,2;3,4}+#REF!', '{1,2;3,4}+#REF!'],
  ])('%s', (typed, file) => {
    expect(forms.toFile(typed)).toBe(file);
    expect(forms.toTyped(file)).toBe(typed);
  });
  test('names are found in any case and in either form', () => {
    expect(forms.toTyped('_xldudf_jw_cable_k(1)+_XLFN.xlookup(1,a1,b1)')).toBe('JW.CABLE_K(1)+XLOOKUP(1,a1,b1)');
    expect(forms.toFile('jw.cable_k(a1)+sum($b2)+_xldudf_JW_CABLE_K(true)')).toBe('_xldudf_JW_CABLE_K(A1)+SUM($B2)+_xldudf_JW_CABLE_K(TRUE)');
  });
  test('the row of the table that a cell stands in', () => {
    expect(forms.toFile('[@In]+[@[cable, m]]', 'cables')).toBe('cables[[#This Row],[In]]+cables[[#This Row],[cable, m]]');
    expect(() => forms.toFile('[@In]')).toThrow(new FormulaRefusal('[@In] stands outside of a table'));
  });
  test('functions of others keep their names', () => {
    expect(forms.toTyped('_xldudf_OTHER_F(1)+MyMacro(1)+_xldudf_JW_GONE(1)')).toBe('_xldudf_OTHER_F(1)+MyMacro(1)+_xldudf_JW_GONE(1)');
    expect(forms.toFile('MyMacro(1)')).toBe('MyMacro(1)');
  });
  test.each([
    ['JW.NO_SUCH(1)', 'JW.NO_SUCH is no function known here'],
    ['1+', 'the formula cannot be read'],
    ['SUM(1', 'the formula cannot be read'],
    ['"a', 'the formula cannot be read'],
    ['', 'the formula cannot be read: it is empty'],
  ])('%p is refused in words', (formula, words) => {
    expect(() => forms.toFile(formula)).toThrow(FormulaRefusal);
    expect(() => forms.toFile(formula)).toThrow(words);
  });
  test('there and back is the same for any mixture', () => {
    const operand = fc.constantFrom('A1', '$B$2', 'Sheet2!C3:D4', 'JW.CABLE_K(A1)', 'XLOOKUP(1,A:A,B:B)', 'B2#', '@A1:A3', 'cables[@In]', 'LET(x,2,x*y)', '"t""x"', '1.5E3', 'TRUE', 'name_1', '(1+2)', '-3', '#N/A');
    const formula = fc.tuple(operand, fc.array(fc.tuple(fc.constantFrom('+', '-', '*', '^', '&', '=', '<>', ' + '), operand), { maxLength: 5 })).map(([first, rest]) => first + rest.map(([operator, next]) => operator + next).join(''));
    fc.assert(fc.property(formula, (typed) => { expect(forms.toTyped(forms.toFile(typed))).toBe(typed); }));
  });
  test('reading never throws', () => {
    fc.assert(fc.property(fc.string(), (text) => { expect(typeof forms.toTyped(text)).toBe('string'); }));
  });
});
