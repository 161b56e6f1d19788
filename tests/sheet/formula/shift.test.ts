import * as fc from 'fast-check';
import { templateOf } from '../../../src/sheet/calculate/template';
import { SharedFormula, shiftFormula } from '../../../src/sheet/formula/shift';

const at = (row: number, column: number) => ({ row, column });

describe('a formula copied to another cell', () => {
  test.each([
    ['A1+$B$2+C$3+$D4', 'B3+$B$2+D$3+$D6'],
    ['SUM(A1:B2,Sheet2!A1)', 'SUM(B3:C4,Sheet2!B3)'],
    ["'My A1 sheet'!A1&\"A1\"", "'My A1 sheet'!B3&\"A1\""],
    ['t[[#This Row],[A1]]+_xldudf_JW_IK3(A1)', 't[[#This Row],[A1]]+_xldudf_JW_IK3(B3)'],
    ['SUM(A:A,1:1,$A:$A)', 'SUM(B:B,3:3,$A:$A)'],
    ['LOG10(A1)+A1_x+#REF!', 'LOG10(B3)+A1_x+#REF!'],
  ])('%s', (text, moved) => expect(shiftFormula(text, at(0, 0), at(2, 1))).toBe(moved));
  test('goes round at the edges of the sheet', () => {
    expect(shiftFormula('A1', at(1, 1), at(0, 0))).toBe('XFD1048576');
  });
  test('knows whether it reads the same everywhere', () => {
    expect(new SharedFormula('$A$1*2', 0, 0).isRelative).toBe(false);
    expect(new SharedFormula('A$1*2', 0, 0).isRelative).toBe(true);
  });
});

describe('the template of a formula', () => {
  const reference = fc.constantFrom('A1', '$B$2', 'C$3', '$D4', 'XFD9', 'Sheet2!E5', "'a ''b A1'!F6", 'G7:H8', '$I9:J10', 'B2#', 'A1048576');
  const other = fc.constantFrom('"A1"', '"x""A1"', 't[A1]', "t[[#This Row],[a'] A1]]", 'LOG10(A1)', 'name_A1', 'A1.b', '_xldudf_JW_X1(A1)', 'TRUE', '1.5E3', '12', '#N/A', '{1,2}');
  const formula = fc.array(fc.tuple(fc.oneof(reference, other), fc.constantFrom('+', '-', '*', '&', '=', ' + ', ',')), { minLength: 1, maxLength: 6 }).map((pieces) => `SUM(${pieces.flat().join('')}1)`);
  const place = fc.tuple(fc.integer({ min: 0, max: 2000 }), fc.integer({ min: 0, max: 200 }));
  test('is the same for every cell it is filled into', () => {
    fc.assert(fc.property(formula, place, place, (text, [row, column], [toRow, toColumn]) => {
      const moved = shiftFormula(text, at(row, column), at(toRow, toColumn));
      const plain = !/XFD|A1048576/.test(text + moved) && !/[A-Z]{2,3}\d/.test(moved.replace(/LOG10|_X1/g, '')) && row <= toRow && column <= toColumn;
      fc.pre(plain);
      expect(templateOf(moved, toRow, toColumn)).toEqual(templateOf(text, row, column));
    }));
  });
  test('tells formulas apart that read other cells', () => {
    fc.assert(fc.property(formula, formula, place, (one, two, [row, column]) => {
      fc.pre(one !== two);
      expect(templateOf(one, row, column).key === templateOf(two, row, column).key).toBe(false);
    }));
  });
  test('the same text with relative references is another template in another cell', () => {
    expect(templateOf('A1*2', 0, 1).key).not.toBe(templateOf('A1*2', 1, 1).key);
    expect(templateOf('$A$1*2', 0, 1).key).toBe(templateOf('$A$1*2', 1, 1).key);
  });
  test('whole rows and columns are told by their text', () => {
    for (const text of ['SUM(A:A)', 'SUM($A:$B)+A1', 'SUM(1:3)', 'SUM($1:3)', "SUM('a'!B:C)"]) expect(templateOf(text, 4, 4)).toEqual({ key: text, movable: false });
    expect(templateOf('SUM(A1:B2)', 4, 4).movable).toBe(true);
  });
});
