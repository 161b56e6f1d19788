import reference from '../fixtures/reference-functions.json';
import { unitOf } from '../../src/core/units';
import type { Kind } from '../../src/functions/kernel/kind';
import { catalogue } from '../../src/sheet/catalogue';

/** Declarations against the reference signatures: order, names, units, bounds, defaults, words. Once released, none of it may move. */
interface ReferenceParameter {
  name: string; kind: string; unit?: string; sign?: string; atLeast?: number; above?: number; upTo?: number; listed?: number[];
  optional?: boolean; datum?: boolean; default?: unknown; defaultInWords?: string; words?: Record<string, string[]>; sizeAtLeast_mohm?: number; alt?: string[];
}
interface ReferenceMember { name: string; spill: boolean; result: string; parameters: ReferenceParameter[] }

const members = (reference.declarations as unknown as { members: ReferenceMember[] }[]).flatMap((declaration) => declaration.members);
const declared = members.filter(({ name }) => catalogue.find(name));

const SIGNS: Record<string, string> = { pos: 'above 0', nonneg: 'atLeast 0', any: 'any' };
/** k stands without a unit in the reference; our declaration names it. */
const sameUnit = (expected: string, kind: Kind<unknown>): boolean => expected === '1' || unitOf(expected) === kind.unit;

test('declared functions are among the reference or among the additions', () => {
  const known = new Set(members.map(({ name }) => name));
  const additions = ['SELECT_RATIO', 'LETTHROUGH_RATIO', 'FAULT_2PH_EARTH_MAX', 'FAULT_DC', 'BUSBAR_STRESS', 'POLE_SPREAD_TEST', 'POLE_SPREAD_MARGIN', 'VERDICT_COUNT', 'VALID_RANGE', 'NET_PROFILE'];
  for (const { member } of catalogue.entries) expect([...known, ...additions]).toContain(member.name);
});

describe.each(declared.map((member) => [member.name, member] as const))('%s', (name, expected) => {
  const { member } = catalogue.find(name)!;
  test('order and names of the arguments', () => {
    const extra = name === 'TRIP_TIME' || name === 'TRIP_BAND' ? ['tr_multiple'] : [];
    expect(Object.keys(member.parameters).filter((key) => !extra.includes(key))).toEqual(expected.parameters.map((parameter) => parameter.name));
    expect(member.spill).toBe(expected.spill);
  });
  if (expected.parameters.length > 0) test.each(expected.parameters.map((parameter) => [parameter.name, parameter] as const))('%s', (key, parameter) => {
    const kind = member.parameters[key]!;
    if (parameter.kind === 'quantity') {
      if (parameter.unit) expect(sameUnit(parameter.unit, kind)).toBe(true);
      expect(kind.bounds).toMatchObject({ sign: parameter.listed ? kind.bounds!.sign : SIGNS[parameter.sign ?? 'any'] });
      expect({ atLeast: kind.bounds!.atLeast, upTo: kind.bounds!.upTo, above: kind.bounds!.above, listed: kind.bounds!.listed })
        .toEqual({ atLeast: parameter.atLeast, upTo: parameter.upTo, above: parameter.above, listed: parameter.listed });
      if (parameter.alt) expect(kind.words).toHaveProperty('off');
    }
    if (parameter.kind === 'count') expect({ upTo: kind.bounds!.upTo, listed: kind.bounds!.listed }).toEqual({ upTo: parameter.upTo, listed: parameter.listed });
    if (parameter.words) expect(kind.words).toEqual(parameter.words);
    if (parameter.kind !== 'cell' && parameter.kind !== 'raw') {
      expect(kind.optional).toBe(parameter.optional ?? false);
      expect(kind.datum).toBe(parameter.datum ?? false);
    }
    if (parameter.default !== undefined && parameter.kind !== 'z') expect(kind.fallback).toEqual(parameter.default);
    if (parameter.defaultInWords !== undefined) expect(kind.fallbackWords).toBe(parameter.defaultInWords);
  });
});
