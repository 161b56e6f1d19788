import { records } from '../../src/functions/generated/records';
import { call } from '../../src/functions/kernel/call';
import { catalogueOf } from '../../src/functions/kernel/catalogue';
import { catalogue } from '../../src/sheet/catalogue';

test('every function takes the arguments that were made for it beforehand', () => {
  const withArguments = catalogue.entries.filter(({ member }) => member.order.length > 0);
  for (const { member } of withArguments) expect(member.record).toBe(records[member.name]);
  expect(Object.keys(records)).toHaveLength(withArguments.length);
});

test('arguments made beforehand for other parameters than today’s are left alone', () => {
  const { declaration } = catalogue.find('CABLE_WITHSTAND')!;
  const swapped = (from: { read(place: number): unknown }): Record<string, unknown> => ({ csa_mm2: from.read(0), k: from.read(1), runs: from.read(2) });
  const shorter = (from: { read(place: number): unknown }): Record<string, unknown> => ({ k: from.read(0), csa_mm2: from.read(1) });
  for (const made of [swapped, shorter]) {
    const stale = catalogueOf([[declaration]], { CABLE_WITHSTAND: made });
    expect(call(stale, stale.find('CABLE_WITHSTAND')!, [115, 25, 2]).args).toEqual({ k: 115, csa_mm2: 25, runs: 2 });
  }
});
