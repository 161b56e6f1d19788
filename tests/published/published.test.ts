import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { catalogue } from '../../src/sheet/catalogue';
import { published } from '../../src/sheet/published';
import { compare } from '../../src/sheet/published/compare';
import { PUBLISHED_KINDS } from '../../src/sheet/published/entry';

/** Figures that others published, against ours; they stand in src/sheet/published, for the pane runs them too. */

const entries = Object.values(published).flat();
const jsonIn = (folder: string): string[] => readdirSync(folder).filter((name) => name.endsWith('.json')).sort();

test('every file of figures is read', () => {
  const files = jsonIn(join(__dirname, '../../src/sheet/published'));
  expect(files.map((name) => name.replace('.json', ''))).toEqual(Object.keys(published).sort());
  expect(files.length).toBeGreaterThan(0);
  expect(jsonIn(__dirname)).toEqual([]);
});

test('every entry has a name of its own, a function of ours and says where it comes from', () => {
  expect(new Set(entries.map(({ id }) => id)).size).toBe(entries.length);
  for (const entry of entries) {
    expect(catalogue.find(entry.function)).toBeDefined();
    expect(['read', 'from memory']).toContain(entry.seen);
    expect(Object.keys(PUBLISHED_KINDS)).toContain(entry.kind);
    for (const text of [entry.printed, entry.source, entry.edition]) expect(text).toMatch(/\S/);
    if (typeof entry.expected === 'number') expect(entry.tolerance).toBeGreaterThan(0);
    if (entry.part !== undefined) expect(['re', 'im', 'abs']).toContain(entry.part);
  }
});

test.each(entries.map((entry) => [entry.id, entry.kind, entry] as const))('%s (%s)', (_id, _kind, entry) => {
  const { ours, difference, agrees } = compare(entry);
  expect({ ours, difference, agrees }).toMatchObject({ agrees: true });
});

test('a figure that is off by more than its tolerance, a word that differs and a refusal do not agree', () => {
  const k = entries.find(({ id }) => id === 'k-cu-pvc-table')!;
  expect(compare({ ...k, expected: 115.6 })).toMatchObject({ agrees: false, ours: 115 });
  expect(compare({ ...k, expected: '115' }).agrees).toBe(false);
  expect(compare({ ...k, args: ['tin', 'PVC'] })).toMatchObject({ agrees: false, difference: undefined });
});
