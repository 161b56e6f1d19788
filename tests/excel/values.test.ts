import { CellError, type Matrix } from '../../src/functions/kernel/cell';
import { call } from '../../src/functions/kernel/call';
import { argumentsOf, cellOf } from '../../src/excel/from-excel';
import { type ExcelErrors, toExcel } from '../../src/excel/to-excel';
import { catalogue } from '../../src/sheet/catalogue';

/** Stands in for Excel's error class: code and message, as its documentation describes them. */
class StandIn extends Error {
  constructor(readonly code: string, message = '') {
    super(message);
  }
}
const errors: ExcelErrors = {
  Error: StandIn,
  ErrorCode: { invalidValue: '#VALUE!', notAvailable: '#N/A', divisionByZero: '#DIV/0!', invalidNumber: '#NUM!', nullReference: '#NULL!' },
};
const invocation = { functionName: 'X', address: 'Sheet1!A1' };
const member = (name: string) => catalogue.find(name)!.member;

/** What Excel gets for a call, thrown errors as [code, message]. */
function inExcel(name: string, ...handed: unknown[]): unknown {
  const entry = catalogue.find(name)!;
  try {
    return toExcel(call(catalogue, entry, argumentsOf(entry.member, [...handed, invocation]), { blankArrivesAsZero: true }).value, errors, entry.member.spill);
  } catch (thrown) {
    return thrown instanceof StandIn ? [thrown.code, thrown.message] : thrown;
  }
}

describe('cells as Excel hands them over', () => {
  test.each([
    ['null', null, null],
    ['undefined', undefined, null],
    ['an empty cell as a data type', { type: 'Empty', basicType: 'Empty', basicValue: '' }, null],
    ['a formatted number', { type: 'Double', basicType: 'Double', basicValue: 3, numberFormat: '0.0' }, 3],
    ['a formatted number of the older kind', { type: 'FormattedNumber', basicValue: 0.5, numberFormat: '0%' }, 0.5],
    ['text as a data type', { type: 'String', basicType: 'String', basicValue: '63 A' }, '63 A'],
    ['a truth value', { type: 'Boolean', basicType: 'Boolean', basicValue: true }, true],
    ['text', ' 5 ', ' 5 '],
    ['an error object', { type: 'Error', basicType: 'Error', basicValue: '#DIV/0!' }, new CellError('#DIV/0!')],
    ['an error of the runtime', Object.assign(new StandIn('#N/A'), { basicValue: '#N/A' }), new CellError('#N/A')],
    ['an unknown error', { type: 'Error', basicValue: '#BUSY!' }, new CellError('#VALUE!')],
    ['an entity', { type: 'Entity', text: 'cable', basicType: 'Error', basicValue: '#VALUE!', properties: {} }, new CellError('#VALUE!')],
    ['an image', { type: 'WebImage', address: 'https://localhost/x.png' }, new CellError('#VALUE!', 'the cell holds a data type, takes a number, text or truth value')],
    ['NaN', NaN, new CellError('#NUM!', 'the cell holds no finite number')],
    ['infinity', Infinity, new CellError('#NUM!', 'the cell holds no finite number')],
  ])('%s', (_what, handed, cell) => {
    expect(cellOf(handed)).toEqual(cell);
  });
});

describe('arguments', () => {
  test('the invocation object is dropped, however many arguments were typed', () => {
    expect(argumentsOf(member('CABLE_WITHSTAND'), [115, 25, null, invocation])).toEqual([115, 25, null]);
    expect(argumentsOf(member('CABLE_WITHSTAND'), [115, 25, invocation])).toEqual([115, 25, null]);
    expect(argumentsOf(member('CORE_VERSION'), [invocation])).toEqual([]);
  });
  test('repeating arguments arrive as one array and are spread', () => {
    expect(argumentsOf(member('ASSUMED'), ['CABLE_WITHSTAND', [[[115]], [[25]]], invocation])).toEqual(['CABLE_WITHSTAND', [[115]], [[25]]]);
    for (const nothing of [null, undefined, [], [null]]) expect(argumentsOf(member('ASSUMED'), ['CORE_VERSION', nothing, invocation])).toEqual(['CORE_VERSION']);
  });
  test('blank, empty text and an Empty object are missing alike', () => {
    for (const blank of [null, '', '  ', { type: 'Empty', basicValue: '' }]) expect(inExcel('CABLE_WITHSTAND', 115, blank, null)).toEqual(['#N/A', 'missing: csa_mm2']);
  });
});

describe('a 0 that may be a blank cell', () => {
  test('where 0 is refused the message says blank or zero', () => {
    expect(inExcel('CABLE_WITHSTAND', 115, 0, null)).toEqual(['#VALUE!', 'csa_mm2: is blank or zero, takes above 0, up to 3000 mm²']);
  });
  test('where 0 has a meaning of its own it is asked for as text, and text 0 counts as zero', () => {
    expect(inExcel('AGREE', 0, 5, 1, null)).toEqual(['#VALUE!', 'designer is blank or zero: write 0 as text']);
    expect(inExcel('AGREE', '0', 5, 1, null)).toBe(inExcel('AGREE', '0.0', 5, 1, null));
    expect(typeof inExcel('AGREE', '0', 5, 1, null)).toBe('string');
  });
  const zeroParameters = catalogue.entries.flatMap(({ member: { name, parameters } }) =>
    Object.entries(parameters).filter(([, kind]) => kind.zeroIsNotBlank && kind.shape === 'cell').map(([parameter]) => [name, parameter] as const));
  test.each(zeroParameters)('%s: a bare 0 for %s is refused in words', (name, parameter) => {
    const { parameters } = member(name);
    const kind = parameters[parameter]!;
    const zero = kind.type === 'impedance' ? [[0]] : 0;
    expect(() => kind.read(zero, parameter, { blankArrivesAsZero: true, remark: () => undefined })).toThrow(`${parameter} is blank or zero: write 0 as text`);
  });
});

describe('the gate', () => {
  const out = (value: unknown): unknown => {
    try {
      return toExcel(value as Matrix, errors, false);
    } catch (thrown) {
      return thrown;
    }
  };
  test.each([
    [NaN, '#NUM!', ''],
    [Infinity, '#NUM!', ''],
    [null, '#VALUE!', 'internal fault: no result; please report the call'],
    [undefined, '#VALUE!', 'internal fault: no result; please report the call'],
    [new CellError('#VALUE!', 'k: got "x"'), '#VALUE!', 'k: got "x"'],
    [new CellError('#N/A', 'missing: k'), '#N/A', 'missing: k'],
    [new CellError('#NUM!', 'k: outside'), '#NUM!', ''],
    [new CellError('#DIV/0!'), '#DIV/0!', ''],
    [new CellError('#NULL!'), '#NULL!', ''],
    [new CellError('#REF!'), '#VALUE!', '#REF! in an argument'],
    [new CellError('#NAME?', 'no such name'), '#VALUE!', '#NAME? in an argument: no such name'],
    ['x'.repeat(32768), '#VALUE!', 'the text has 32768 characters, a cell holds 32767'],
    [[], '#N/A', 'the table is empty'],
    [[[]], '#N/A', 'the table is empty'],
  ])('%p leaves as %s %s', (value, code, message) => {
    const thrown = out(value) as StandIn;
    expect(thrown).toBeInstanceOf(StandIn);
    expect([thrown.code, thrown.message]).toEqual([code, message]);
  });
  test.each([0, -1.5, '', 'pass', true, false])('%p leaves as it is', (value) => {
    expect(out(value)).toBe(value);
  });
  test('inside a spill every cell passes the gate and rows are of one length', () => {
    const rows = out([[1, NaN, null], ['a']]) as unknown[][];
    expect(rows[0]![0]).toBe(1);
    expect(rows[0]![1]).toMatchObject({ code: '#NUM!' });
    expect(rows[0]![2]).toMatchObject({ code: '#VALUE!' });
    expect(rows[1]).toEqual(['a', '', '']);
  });
  test('a function that spills gives rows, its refusals included', () => {
    expect(inExcel('SHOW_STEPS', 'CABLE_WITHSTAND', [[[115]], [[25]]])).toEqual([
      ['step', 'value'], ['k', '115'], ['csa_mm2', '25 mm²'], ['runs', '1'], ['k²S² = (k·S·n)²', '8.26563E+06 A²s'], ['CABLE_WITHSTAND', 8265625],
    ]);
    expect(inExcel('SHOW_STEPS', 'CABLE_WITHSTAND', [[[115]]])).toEqual(['#N/A', 'missing: csa_mm2']);
  });
});
