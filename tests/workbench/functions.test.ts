import { catalogue } from '../../src/sheet/catalogue';
import { functionNames } from '../../src/sheet/evaluate';
import { registerFunctions } from '../../src/workbench/grid/functions';
import { grid } from './support/grid';
import { opened } from './support/opened';

registerFunctions(grid);
const { functionRegistry } = grid.registries;

describe('help for functions in the grid', () => {
  it('has every function of the catalogue, with each argument in order', () => {
    for (const { member } of catalogue.entries) {
      const help = functionRegistry.get(`JW.${member.name}`);
      expect(help.args.map(({ name }) => name)).toEqual(Object.keys(member.parameters));
      expect(help.description).toContain(member.summary);
    }
    expect(functionRegistry.getKeys().filter((name) => name.startsWith('JW.'))).toHaveLength(catalogue.entries.length);
  });

  it('names unit, bounds, words and defaults', () => {
    const argument = (name: string, place: number) => functionRegistry.get(name).args[place]!;
    expect(argument('JW.CABLE_WITHSTAND', 1)).toMatchObject({ name: 'csa_mm2', description: expect.stringMatching(/up to 3000 mm²/) as string });
    expect(argument('JW.CABLE_WITHSTAND', 2)).toMatchObject({ name: 'runs', optional: true, description: expect.stringMatching(/left out: 1/) as string });
    expect(argument('JW.CABLE_K', 0)).toMatchObject({ name: 'metal', description: expect.stringMatching(/copper \(cu\)/) as string });
    expect(argument('JW.CABLE_K', 0).proposalValues).toContainEqual({ value: 'copper', label: 'cu' });
  });

  it('lists what the evaluator knows and nothing else', () => {
    const listed = functionRegistry.getAll().filter(({ hidden }) => !hidden).map(({ name }) => name).filter((name) => !name.startsWith('JW.'));
    expect(new Set(listed)).toEqual(new Set(functionNames()));
  });

  it('a formula past the evaluator would say so instead of giving a value of its own', () => {
    const { value } = functionRegistry.get('SUM').compute.call({} as never, { value: 1 }) as { value: unknown };
    expect(value).toBe('#UNSUPPORTED!');
  });
});

describe('our functions in cells', () => {
  const book = opened({ sheets: { S: '' } });
  book.type('A1', '=1/0');
  it.each<[string, unknown, RegExp]>([
    ['=JW.CABLE_K("Cu","XLPE")', 143, /^$/],
    ['=jw.cable_k("Cu","XLPE")', 143, /^$/],
    ['=JW.CABLE_WITHSTAND(143,Z1)', '#N/A', /missing: csa_mm2/],
    ['=JW.CABLE_WITHSTAND(143,"185 kg")', '#VALUE!', /kg.*mm²/],
    ['=JW.CABLE_WITHSTAND(143,-5)', '#VALUE!', /csa_mm2/],
    ['=JW.CABLE_WITHSTAND(143,1e9)', '#NUM!', /3000/],
    ['=JW.CABLE_WITHSTAND(143,TRUE)', '#VALUE!', /TRUE/],
    ['=JW.CABLE_WITHSTAND(143,A1)', '#DIV/0!', /./],
    ['=JW.CABLE_WITHSTAND(143,Y1:Z2)', '#N/A', /missing/],
    ['=JW.CABLE_WITHSTAND(143,A1:B2)', '#VALUE!', /range of 4 cells/],
    ['=JW.CAUTION("CABLE_WITHSTAND",143,A1)', 'input: division by zero', /^$/],
    ['=CABLE_K("Cu","XLPE")', '#NAME?', /CABLE_K/],
    ['=IFERROR(JW.CABLE_WITHSTAND(143,Z1),"none")', 'none', /^$/],
  ])('%s', (formula, value, words) => {
    book.type('D4', formula);
    expect(book.value('D4')).toBe(value);
    expect(book.message('D4')).toMatch(words);
  });

  it('never shows the texts of other makers for a fault', () => {
    book.type('D4', '=JW.CABLE_K(LAMBDA(x,x),1)');
    expect(book.message('D4')).not.toMatch(/support ticket/i);
  });
});
