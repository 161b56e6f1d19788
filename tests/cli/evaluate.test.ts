import { catalogue } from '../../src/sheet/catalogue';
import { joulewright } from '../support/terminal';

describe('evaluate', () => {
  test('one value a line; native functions beside ours', async () => {
    expect(await joulewright(['evaluate', '=JW.CABLE_K("Cu","XLPE")', 'ROUND(JW.FAULT_3PH_MAX("2.31+7.9i",415),1)', '=1<2', '="a"&"b"'])).toEqual({
      status: 0, out: ['143', '30.6', 'TRUE', 'ab'], error: [],
    });
  });
  test('formulas one a line on standard input', async () => {
    expect(await joulewright(['evaluate'], '=1+1\n\n=SUM({1,2;3,4})\r\n')).toEqual({ status: 0, out: ['2', '10'], error: [] });
  });
  test('an error is its code and reason, and status 1', async () => {
    expect(await joulewright(['evaluate', '=JW.CABLE_WITHSTAND(143,"")', '=JW.CABLE_WITHSTAND(143,"185 kg")'])).toEqual({
      status: 1, out: ['#N/A missing: csa_mm2', '#VALUE! csa_mm2: got "185 kg": kg is not a unit known here, takes mm²'], error: [],
    });
  });
  test('ranges are inline arrays, and so are answers of several cells', async () => {
    const { out } = await joulewright(['evaluate', '=JW.IMP_SERIES({"1+1i";"2+0.5i"},0.25)', '=SEQUENCE(2,2)']);
    expect(out).toEqual(['3.25+1.5i', '{1,2;3,4}']);
  });
  test('JSON', async () => {
    const { out, status } = await joulewright(['evaluate', '--json', '=JW.CABLE_K("Cu","XLPE")', '=JW.CABLE_K("Fe","XLPE")', '={1,"x"}']);
    expect(status).toBe(1);
    expect(JSON.parse(out.join('\n'))).toEqual([
      { formula: '=JW.CABLE_K("Cu","XLPE")', value: 143 },
      { formula: '=JW.CABLE_K("Fe","XLPE")', error: '#VALUE!', message: 'metal: got "Fe", takes copper (cu) · aluminium (al, aluminum)' },
      { formula: '={1,"x"}', value: [[1, 'x']] },
    ]);
  });
  test.each([
    ['=A1+1', '#REF! no workbook: A1 cannot be read'],
    ['=JW.NO_SUCH(1)', '#NAME? function JW.NO_SUCH is not supported here'],
    ['=CABLE_K("Cu","XLPE")', '#NAME? function CABLE_K is not supported here'],
    ['=1+', '#UNSUPPORTED! the formula cannot be read'],
  ])('%s says what is wrong', async (formula, words) => {
    const { out, status } = await joulewright(['evaluate', formula]);
    expect(out.join('\n')).toContain(words);
    expect(status).toBe(1);
  });
  test('nothing to evaluate, unknown options and commands cannot run: status 2, words on standard error', async () => {
    expect(await joulewright(['evaluate'], '  \n')).toMatchObject({ status: 2, out: [], error: [expect.stringContaining('no formula to evaluate')] });
    expect(await joulewright(['evaluate', '--jsn', '=1'])).toMatchObject({ status: 2, out: [], error: [expect.stringContaining("--jsn")] });
    expect(await joulewright(['evalute'])).toMatchObject({ status: 2, error: [expect.stringContaining('no command named evalute')] });
  });
  test('control characters of a text never reach the terminal', async () => {
    const { out } = await joulewright(['evaluate', '="a"&CHAR(27)&"[2J"&CHAR(10)&"b"']);
    expect(out).toEqual(['a\\x1b[2J\\nb']);
  });
});

describe('help', () => {
  test.each(['evaluate', 'recompute', 'table', 'functions'])('%s --help', async (command) => {
    const { out, status } = await joulewright([command, '--help']);
    expect(status).toBe(0);
    expect(out[0]).toContain(`joulewright ${command}`);
  });
  test('--help and --version', async () => {
    expect((await joulewright(['--help'])).out.join('\n')).toContain('calculation aid, not a design approval');
    expect((await joulewright(['--version'])).out).toEqual([expect.stringMatching(/^\d+\.\d+\.\d+$/)]);
    expect((await joulewright([])).status).toBe(2);
  });
});

describe('functions', () => {
  test('lists them all, and tells all about one', async () => {
    const { out } = await joulewright(['functions']);
    expect(out.map((line) => /JW\.(\w+)/.exec(line)![1])).toEqual(catalogue.entries.map(({ member }) => member.name));
    const one = (await joulewright(['functions', 'jw.cable_withstand'])).out.join('\n');
    for (const words of ['JW.CABLE_WITHSTAND(k, csa_mm2, [runs]) → A²s', 'above 0, up to 3000 mm²', 'left out: 1', 'IEC 60364-4-43:2023, 434.5.2', 'even sharing']) expect(one).toContain(words);
    expect(await joulewright(['functions', 'NO_SUCH'])).toMatchObject({ status: 2, error: [expect.stringContaining('no function named NO_SUCH')] });
  });
});
