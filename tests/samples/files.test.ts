import { CellError } from '../../src/functions/kernel/cell';
import { openBook } from '../../src/sheet/book';
import { customFunctions } from '../../src/sheet/custom-functions';
import { recompute } from '../../src/sheet/recompute';
import { cableSchedule } from '../../src/samples/cable-schedule';
import { checker } from '../../src/samples/checker';
import { engineer } from '../../src/samples/engineer';
import { estimator } from '../../src/samples/estimator';
import { starter } from '../../src/samples/starter';
import { validateWorkbook } from '../support/validate-xlsx';
import { SAMPLES, type Sample, bookOf, bytesOf, desktopFunctions } from './support';

const BUILDERS: Readonly<Record<Sample, () => Promise<Uint8Array>>> = { 'cable-schedule': cableSchedule, estimator, engineer, checker, starter };

/** Formulas that a colleague typed over, on purpose: Excel allows it, and marks it. */
const KNOWN: Partial<Record<Sample, readonly string[]>> = {
  checker: ['K9', 'M12', 'N13'].map((address) => `Designer: table Design: ${address} is not the formula of its column`),
};

describe.each(SAMPLES)('%s', (sample) => {
  const bytes = bytesOf(sample);
  test('is what its builder writes, byte for byte', async () => {
    expect(Buffer.compare(await BUILDERS[sample](), bytes)).toBe(0);
  });
  test('is a sound workbook', () => expect(validateWorkbook(bytes)).toEqual(KNOWN[sample] ?? []));
  test('holds the values of its formulas: computing it anew changes nothing and leaves nothing out', () => {
    const { changed, notComputed, formulas, bytes: again } = recompute(bytes, customFunctions);
    expect(formulas).toBeGreaterThan(100);
    expect(changed).toEqual([]);
    expect(notComputed).toEqual([]);
    expect(again).toBe(bytes);
  });
  test('no formula ends in an error or an empty text', () => {
    const bad = bookOf(sample).formulaCells.filter(({ value }) => value instanceof CellError || value === '' || value === null);
    expect(bad.map(({ sheet, address, value }) => `${sheet.name}!${address} ${String(value)}`)).toEqual([]);
  });
  test('desktop Excel, where a blank cell arrives as 0, gives the same values', () => {
    const desktop = openBook(bytes, desktopFunctions);
    expect(desktop.changes().map(({ sheet, address, now }) => `${sheet}!${address} ${now instanceof CellError ? now.message : String(now)}`)).toEqual([]);
    expect(desktop.notComputed()).toEqual([]);
  });
  test('every sheet has its title and says what it is', () => {
    const book = bookOf(sample);
    for (const { name } of book.sheets) {
      if (name === 'Lists') continue;
      expect(String(book.value(name, 'A1')).length).toBeGreaterThan(3);
      expect(book.value(name, 'A6')).toMatch(/invented/i);
      expect(book.value(name, 'A6')).toContain('A calculation aid, not a design approval: local codes, the maker’s current data and a licensed engineer decide.');
    }
  });
});
