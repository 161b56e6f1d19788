import { catalogue } from '../../src/sheet/catalogue';
import { parseBox } from '../../src/sheet/xlsx/address';
import { callText, readCall } from '../../src/pane/fill/call-text';
import { fieldText, readField } from '../../src/pane/fill/field-text';
import { referenceTo, sheetPrefix } from '../../src/pane/fill/reference';

const isName = (name: string): boolean => ['k_site', 'cables'].includes(name);
const kindOf = (name: string, parameter: string) => catalogue.find(name)!.member.parameters[parameter]!;
const csa = kindOf('CABLE_WITHSTAND', 'csa_mm2');
const metal = kindOf('CABLE_K', 'metal');
const functionName = kindOf('CLAUSE', 'function_name');
const listed = kindOf('CABLE_MIN_SIZE', 'listed');
const z = kindOf('FAULT_3PH_MAX', 'z_mohm');
const setting = catalogue.find('SELECT_PEAK_TEST')!.member.order.find(([, { type }]) => type === 'setting')![1];

describe('what is typed into a field', () => {
  test.each([
    ['a number', '25', csa, '25'],
    ['a number with a power of ten', '8.2e6', csa, '8.2E6'],
    ['a number with its unit is a text', '63 kA', csa, '"63 kA"'],
    ['per cent is a text, so that the unit counts', '5 %', csa, '"5 %"'],
    ['an address', 'C2', csa, 'C2'],
    ['a range on another sheet', "'Cable list'!C2:D9", csa, "'Cable list'!C2:D9"],
    ['a column of this row', '[@csa_mm2]', csa, '[@csa_mm2]'],
    ['a column of a table', 'cables[k]', csa, 'cables[k]'],
    ['a name of the workbook', 'k_site', csa, 'k_site'],
    ['an unknown name is a text', 'k_other', csa, '"k_other"'],
    ['a word of the list', 'Copper', metal, '"Copper"'],
    ['a synonym', 'al', metal, '"al"'],
    ['an address where a word is asked', 'C2', metal, 'C2'],
    ['off', 'off', setting, '"off"'],
    ['a truth value', 'yes', listed, 'TRUE'],
    ['a complex text', '1.05+5.68i', z, '"1.05+5.68i"'],
    ['an address where a text is asked is a text', 'C2', functionName, '"C2"'],
    ['with = it is a reference', '=C2', functionName, 'C2'],
    ['quotes are doubled', 'the 2" run', functionName, '"the 2"" run"'],
    ['a formula', '=JW.CABLE_K("Cu","XLPE")', csa, 'JW.CABLE_K("Cu","XLPE")'],
    ['an array', '{1,2;3,4}', csa, '{1,2;3,4}'],
    ['nothing', '  ', csa, ''],
  ])('%s', (_what, typed, kind, argument) => expect(readField(typed, kind, isName)).toEqual({ argument }));

  test.each([
    ['=', 'nothing stands behind the ='],
    ['=C2,C3', 'a comma parts arguments; this field takes one'],
    ['=SUM(1', 'cannot be read as a formula: '],
    ['=C2) + (1', 'cannot be read as a formula: '],
    ['="open', 'cannot be read as a formula: a quote is not closed'],
  ])('%s has a fault', (typed, fault) => expect(readField(typed, csa, isName).fault).toContain(fault));

  test.each([
    ['25', csa, '25'], ['"63 kA"', csa, '63 kA'], ['C2', csa, 'C2'], ['"C2"', csa, '="C2"'], ['C2', functionName, '=C2'], ['"C2"', functionName, 'C2'],
    ['SUM(A1:A3)', csa, '=SUM(A1:A3)'], ['"the 2"" run"', functionName, 'the 2" run'], ['"=x"', functionName, '="=x"'], ['TRUE', listed, 'TRUE'], ['', csa, ''], ['$C$2', csa, '$C$2'],
    ['" spaced"', functionName, '=" spaced"'],
  ])('%s comes back as it was', (argument, kind, typed) => {
    expect(fieldText(argument, kind, isName)).toBe(typed);
    expect(readField(typed, kind, isName)).toEqual({ argument });
  });
});

describe('a call as text', () => {
  const member = (name: string) => catalogue.find(name)!.member;
  test.each([
    ['all given', 'CABLE_WITHSTAND', { k: ['115'], csa_mm2: ['C2'], runs: ['2'] }, '=JW.CABLE_WITHSTAND(115,C2,2)'],
    ['left out at the end', 'CABLE_WITHSTAND', { k: ['115'], csa_mm2: ['C2'], runs: [''] }, '=JW.CABLE_WITHSTAND(115,C2)'],
    ['left out between', 'CABLE_K', { metal: ['"Cu"'], insulation: ['"EPR"'], start_C: ['75'] }, '=JW.CABLE_K("Cu","EPR",,75)'],
    ['repeating', 'IMP_SERIES', { z_mohm: ['A1', '', 'A3:A5', ''] }, '=JW.IMP_SERIES(A1,A3:A5)'],
    ['none', 'CORE_VERSION', {}, '=JW.CORE_VERSION()'],
  ])('%s', (_what, name, given, text) => {
    const [repeating] = member(name).order;
    const named = repeating?.[1].shape === 'repeating' && 'z_mohm' in given ? { [repeating[0]]: given.z_mohm as string[] } : given;
    expect(callText(member(name), named as Record<string, string[]>)).toBe(text);
    expect(readCall(text)!.entry.member.name).toBe(name);
    expect(callText(member(name), readCall(text)!.given)).toBe(text);
  });
  test.each([
    ['nested calls, arrays and quotes with commas', '=JW.CABLE_WITHSTAND(JW.CABLE_K("Cu","XLPE"),SUM({1,2},MAX(3,"4,5")),2)', { k: ['JW.CABLE_K("Cu","XLPE")'], csa_mm2: ['SUM({1,2},MAX(3,"4,5"))'], runs: ['2'] }],
    ['the form of files', '_xldudf_JW_CABLE_WITHSTAND(cables[[#This Row],[k]],C2)', { k: ['cables[@k]'], csa_mm2: ['C2'], runs: [''] }],
  ])('is read back: %s', (_what, formula, given) => expect(readCall(formula)!.given).toEqual(given));
  test.each(['=1+JW.CABLE_K("Cu","XLPE")', '=JW.CABLE_K("Cu","XLPE")*2', '=SUM(1,2)', '=JW.NO_SUCH(1)', '115', '', '=JW.CABLE_K("Cu"', '=JW.CABLE_WITHSTAND(1,2,3,4)'])('%s is no single call', (formula) => expect(readCall(formula)).toBeUndefined());
  test('every example of the declarations that is one call comes back the same', () => {
    const examples = catalogue.declarations.flatMap((declaration) => declaration.examples);
    const single = examples.filter((example) => readCall(example));
    expect(single.length).toBeGreaterThan(150);
    for (const example of single) {
      const { entry, given } = readCall(example)!;
      const typed = Object.fromEntries(entry.member.order.map(([name, kind]) => [name, given[name]!.map((each) => readField(fieldText(each, kind, isName), kind, isName).argument)]));
      expect(callText(entry.member, typed)).toBe(callText(entry.member, Object.fromEntries(Object.entries(given).map(([name, list]) => [name, list.map((each) => each.trim())]))));
    }
  });
});

describe('references', () => {
  const tables = [
    { name: 'cables', sheet: 'Cable list', box: parseBox('A1:D9')!, headerRows: 1 as const, totalsRows: 0 as const, columns: ['ref', 'k', 'csa (mm²)', "it's [a] #"].map((name) => ({ name })) },
  ];
  const target = { sheet: 'Cable list', row: 3, column: 3 };
  const to = (sheet: string, box: string, from = target) => referenceTo(sheet, parseBox(box)!, from, tables);
  test.each([
    ['the same row of the same table', 'Cable list', 'B4', '[@k]'],
    ['a name with other signs', 'Cable list', 'C4', '[@[csa (mm²)]]'],
    ['a name with signs to be escaped', 'Cable list', 'D4', "[@[it''s '[a'] '#]]"],
    ['another row', 'Cable list', 'B5', 'B5'],
    ['the heading', 'Cable list', 'B1', 'B1'],
    ['a whole column', 'Cable list', 'B2:B9', 'cables[k]'],
    ['several whole columns', 'Cable list', 'A2:C9', 'cables[[ref]:[csa (mm²)]]'],
    ['a part of a column', 'Cable list', 'B2:B8', 'B2:B8'],
    ['outside the table', 'Cable list', 'F4', 'F4'],
    ['another sheet', 'Data', 'B2', 'Data!B2'],
    ['another sheet with a quote', "Bob's", 'B2:C3', "'Bob''s'!B2:C3"],
  ])('%s', (_what, sheet, box, text) => expect(to(sheet, box)).toBe(text));
  test('from outside the table, a cell is an address and a whole column a column', () => {
    expect(to('Cable list', 'B4', { ...target, column: 7 })).toBe('B4');
    expect(to('Cable list', 'B4', { sheet: 'Data', row: 3, column: 1 })).toBe("'Cable list'!B4");
    expect(to('Cable list', 'B2:B9', { sheet: 'Data', row: 3, column: 1 })).toBe('cables[k]');
  });
  test.each([['Data', 'Data!'], ['A1', "'A1'!"], ['R1C1', "'R1C1'!"], ['2026', "'2026'!"], ['Übersicht', 'Übersicht!'], ['a b', "'a b'!"]])('sheet %s', (sheet, prefix) => expect(sheetPrefix(sheet)).toBe(prefix));
});
