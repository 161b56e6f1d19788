import { readFileSync } from 'node:fs';
import path from 'node:path';
import Ajv from 'ajv-draft-04';
import teams from '@microsoft/app-manifest/build/json-schemas/teams/v1.30/MicrosoftTeams.schema.json';
import reference from '../fixtures/reference-functions.json';
import { catalogue } from '../../src/sheet/catalogue';
import { type CustomFunctionsMetadata, customFunctionsMetadata } from '../../src/sheet/metadata/custom-functions';

const committed = JSON.parse(readFileSync(path.resolve(__dirname, '../../src/excel/generated/functions.json'), 'utf8')) as CustomFunctionsMetadata;
const made = customFunctionsMetadata(catalogue);

/** Microsoft's definitions of functions and enums, under the top level that functions.json has. */
const definitions = teams.definitions as unknown as Record<string, { properties: Record<string, object> }>;
const accepts = new Ajv({ strict: false, allErrors: true, unicodeRegExp: true }).compile({
  $schema: 'http://json-schema.org/draft-04/schema#',
  type: 'object',
  required: ['functions'],
  additionalProperties: false,
  definitions,
  properties: {
    functions: definitions['extensionCustomFunctions']!.properties['functions']!,
    enums: definitions['extensionCustomFunctions']!.properties['enums']!,
    allowCustomDataForDataTypeAny: { type: 'boolean' },
    allowErrorForDataTypeAny: { type: 'boolean' },
  },
});

describe('functions.json', () => {
  test('Microsoft’s schema accepts it', () => {
    accepts(made);
    expect(accepts.errors ?? []).toEqual([]);
  });
  test('Microsoft’s schema refuses what is wrong', () => {
    const broken: [string, (file: CustomFunctionsMetadata) => void][] = [
      ['short id', (file) => (file.functions[0]!.id = 'K')],
      ['sign in a name', (file) => (file.functions[0]!.name = 'CABLE-K')],
      ['dimensionality', (file) => (file.functions[0]!.result.dimensionality = 'list' as 'matrix')],
      ['long description', (file) => (file.functions[0]!.parameters[0]!.description = 'x'.repeat(513))],
      ['enum without type', (file) => file.enums.push({ id: 'no.type', values: [] } as never)],
      ['unknown key', (file) => Object.assign(file, { $comment: 'generated' })],
    ];
    for (const [what, damage] of broken) {
      const copy = structuredClone(made);
      damage(copy);
      expect([what, accepts(copy)]).toEqual([what, false]);
    }
  });
  test('the committed file is what the declarations say', () => {
    expect(committed).toEqual(made);
  });
});

describe('contract with the catalogue', () => {
  const names = catalogue.entries.map(({ member }) => member.name);
  test('every function of the catalogue is there once, and no other', () => {
    expect(committed.functions.map(({ id }) => id)).toEqual(names);
    expect(new Set(names).size).toBe(names.length);
    for (const { id, name } of committed.functions) expect(name).toBe(id);
  });
  test('arguments stand in the declared order', () => {
    for (const { id, parameters } of committed.functions) {
      expect(parameters.map(({ name }) => name)).toEqual(Object.keys(catalogue.find(id)!.member.parameters));
    }
  });
  test('released arguments never move: new ones only at the end', () => {
    const released = reference.declarations.flatMap(({ members }) => members as { name: string; parameters: { name: string }[] }[]);
    let compared = 0;
    for (const { name, parameters } of released) {
      const now = committed.functions.find(({ id }) => id === name);
      if (!now) continue;
      compared += 1;
      const before = parameters.map((parameter) => parameter.name);
      const kept = now.parameters.map((parameter) => parameter.name).filter((parameter) => parameter !== 'tr_multiple');
      expect([name, kept]).toEqual([name, before]);
    }
    expect(compared).toBeGreaterThan(0);
  });
  test('errors reach our functions; numbers with formats are not asked for', () => {
    expect(committed.allowErrorForDataTypeAny).toBe(true);
    expect(committed.allowCustomDataForDataTypeAny).toBe(false);
    for (const { parameters } of committed.functions) for (const { type } of parameters) expect(type).toBe('any');
  });
  test('ranges, two-cell impedances and repeating arguments are matrices; repeating comes last; optional ones close the list', () => {
    for (const { id, parameters, result } of committed.functions) {
      const { member } = catalogue.find(id)!;
      expect(result.dimensionality).toBe(member.spill ? 'matrix' : 'scalar');
      parameters.forEach(({ name, dimensionality, repeating, optional }, place) => {
        const kind = member.parameters[name]!;
        expect([id, name, dimensionality]).toEqual([id, name, kind.shape !== 'cell' || kind.type === 'impedance' ? 'matrix' : 'scalar']);
        expect(repeating ?? false).toBe(kind.shape === 'repeating');
        if (repeating) expect(place).toBe(parameters.length - 1);
        if (optional) for (const later of parameters.slice(place)) expect([id, later.name, later.optional]).toEqual([id, later.name, true]);
      });
    }
  });
  test('word arguments have their list, with every word that is declared', () => {
    const used = new Set<string>();
    for (const { id, parameters } of committed.functions) {
      for (const { name, customEnumId } of parameters) {
        const kind = catalogue.find(id)!.member.parameters[name]!;
        expect([id, name, customEnumId !== undefined]).toEqual([id, name, kind.type === 'word']);
        if (customEnumId === undefined) continue;
        used.add(customEnumId);
        const list = committed.enums.find((each) => each.id === customEnumId)!;
        expect(list.values.map(({ stringValue }) => stringValue)).toEqual(Object.keys(kind.words!));
      }
    }
    expect(committed.enums.map((each) => each.id).sort()).toEqual([...used].sort());
  });
  test('help names the unit, the limits and the default', () => {
    const withstand = committed.functions.find(({ id }) => id === 'CABLE_WITHSTAND_CURRENT')!;
    expect(withstand.parameters.map(({ description }) => description)).toEqual([
      'adiabatic factor k of the conductor; 15 to 300 A√s/mm²',
      'conductor cross-section; above 0, up to 3000 mm²',
      'fault duration; above 0, up to 5 s',
      'conductors in parallel for each line; whole number, 1 to 24; left out: 1',
    ]);
  });
});

describe('names that Excel would read otherwise', () => {
  const looksLikeACell = (name: string): boolean => /^[A-Z]{1,3}\d{1,7}$/i.test(name) || /^(?:R\d*C?\d*|C\d*|[LZF]\d*[CS]\d*)$/i.test(name);
  /** Names that the old macro language or the worksheet keeps for itself, of those that a protection function might want. */
  const RESERVED = ['RUN', 'ECHO', 'HALT', 'RETURN', 'ARGUMENT', 'CALL', 'CONVERT', 'COMPLEX', 'RATE', 'CELL', 'INFO', 'TYPE', 'CURRENT', 'TRUE', 'FALSE', 'LET', 'CHOOSE', 'ROUND'];
  test('the rule knows them', () => {
    for (const bad of ['TRF1', 'ARC1', 'K20', 'IK3', 'R1C1', 'RC', 'L1C1']) expect([bad, looksLikeACell(bad)]).toEqual([bad, true]);
    for (const good of ['CABLE_K', 'FAULT_3PH_MAX', 'CLAUSE']) expect([good, looksLikeACell(good)]).toEqual([good, false]);
  });
  test.each(made.functions.map(({ name }) => name))('%s is none of them', (name) => {
    expect(looksLikeACell(name)).toBe(false);
    expect(RESERVED).not.toContain(name);
    expect(name).toMatch(/^[A-Z][A-Z0-9_]{2,63}$/);
  });
});
