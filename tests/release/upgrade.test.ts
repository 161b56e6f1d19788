import released from '../fixtures/released-functions.json';
import { type Released, type ReleasedFunction, releasedPart, releasedText, upgradeFaults } from '../../scripts/release/upgrade-rules';
import { catalogue } from '../../src/sheet/catalogue';
import { customFunctionsMetadata } from '../../src/sheet/metadata/custom-functions';

const before = released as Released;
const metadata = customFunctionsMetadata(catalogue);
const now = releasedPart(before.version, metadata, catalogue);

test('formulas in files of the last release keep their meaning', () => {
  expect(before.functions.length).toBeGreaterThan(100);
  expect(upgradeFaults(before, now)).toEqual([]);
});

test('the released part is written one function a line and read as it was', () => {
  expect(JSON.parse(releasedText(now))).toEqual(now);
  expect(releasedText(now).split('\n')).toHaveLength(now.functions.length + 6);
});

test('words of a list stand with the argument that takes them', () => {
  const { parameters } = now.functions.find(({ id }) => id === 'CABLE_K')!;
  expect(parameters[0]).toMatchObject({ listed: true, words: expect.arrayContaining(['copper', 'cu', 'aluminium', 'al']) });
});

describe('a planted change is found', () => {
  const changed = (id: string, change: (each: ReleasedFunction) => void): Released => {
    const copy = structuredClone(before);
    change(copy.functions.find((each) => each.id === id)!);
    return copy;
  };
  const faults = (id: string, change: (each: ReleasedFunction) => void): string[] => upgradeFaults(before, changed(id, change));

  test.each<[string, string, (each: ReleasedFunction) => void, RegExp]>([
    ['id', 'CABLE_WITHSTAND', (each) => (each.id = 'CABLE_JOULE'), /^CABLE_WITHSTAND is gone/],
    ['name', 'CABLE_WITHSTAND', (each) => (each.name = 'CABLE_JOULE'), /the name was CABLE_WITHSTAND/],
    ['one cell becomes several', 'CABLE_WITHSTAND', (each) => (each.result = 'matrix'), /the result was a scalar/],
    ['argument renamed', 'CABLE_WITHSTAND', (each) => (each.parameters[1]!.name = 'size_mm2'), /argument 2 \(csa_mm2\) is gone; size_mm2 stands there/],
    ['last argument removed', 'CABLE_WITHSTAND', (each) => each.parameters.pop(), /argument 3 \(runs\) is gone$/],
    ['argument becomes needed', 'CABLE_WITHSTAND', (each) => delete each.parameters[2]!.optional, /\(runs\) was optional/],
    ['one cell becomes a range', 'CABLE_WITHSTAND', (each) => (each.parameters[0]!.dimensionality = 'matrix'), /\(k\) was a scalar and is a matrix/],
    ['argument repeats', 'CABLE_WITHSTAND', (each) => (each.parameters[2]!.repeating = true), /\(runs\) is now repeating/],
    ['argument repeats no more', 'IMP_SERIES', (each) => delete each.parameters[0]!.repeating, /\(z_mohm\) was repeating/],
    ['word dropped', 'CABLE_K', (each) => each.parameters[0]!.words!.splice(0, 1), /no longer takes "copper"/],
    ['synonym dropped', 'CABLE_K', (each) => (each.parameters[0]!.words = each.parameters[0]!.words!.filter((word) => word !== 'cu')), /no longer takes "cu"/],
    ['all words dropped', 'CABLE_K', (each) => delete each.parameters[0]!.words, /no longer takes "al"/],
    ['any value becomes a list of words', 'CABLE_WITHSTAND', (each) => (each.parameters[0]!.listed = true), /took any value/],
    ['new argument that is needed', 'CABLE_WITHSTAND', (each) => each.parameters.push({ name: 'layers', dimensionality: 'scalar' }), /new argument layers must be optional/],
    ['new argument after a repeating one', 'IMP_SERIES', (each) => each.parameters.push({ name: 'c', dimensionality: 'scalar', optional: true }), /nothing may follow/],
    // Formulas that give headers by its place would give the new option instead.
    ['new option before headers', 'NET_RADIAL', (each) => each.parameters.splice(-1, 0, { name: 'temp', dimensionality: 'scalar', optional: true }), /\(headers\) has moved/],
  ])('%s', (_what, id, change, words) => {
    expect(faults(id, change).join('\n')).toMatch(words);
  });

  test('two arguments change places: both are named', () => {
    expect(faults('CABLE_WITHSTAND', ({ parameters }) => parameters.splice(0, 2, parameters[1]!, parameters[0]!))).toEqual([
      'CABLE_WITHSTAND, argument 1 (k) has moved', 'CABLE_WITHSTAND, argument 2 (csa_mm2) has moved',
    ]);
  });

  test('what keeps formulas as they are is free: functions, options at the end, words, needed becomes optional, order of functions', () => {
    const copy = changed('CABLE_K', ({ parameters }) => {
      parameters[0]!.words!.push('brass');
      delete parameters[0]!.listed;
      parameters.push({ name: 'edition', dimensionality: 'scalar', optional: true });
    });
    copy.functions.reverse();
    copy.functions.push({ id: 'NEW_ONE', name: 'NEW_ONE', result: 'scalar', parameters: [{ name: 'x', dimensionality: 'scalar' }] });
    copy.functions.find(({ id }) => id === 'CABLE_WITHSTAND')!.parameters[1]!.optional = true;
    expect(upgradeFaults(before, copy)).toEqual([]);
  });

  test('descriptions and help addresses are free', () => {
    const reworded = structuredClone(metadata);
    for (const each of reworded.functions) Object.assign(each, { description: 'x', helpUrl: 'https://tools.example.org/h' });
    expect(upgradeFaults(before, releasedPart('9.9.9', reworded, catalogue))).toEqual([]);
  });
});
