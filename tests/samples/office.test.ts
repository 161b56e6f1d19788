import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { openBook, sameValue } from '../../src/sheet/book';
import { customFunctions } from '../../src/sheet/custom-functions';
import { SAMPLES, type Sample, bookOf, fileOf } from './support';

/** Pages on A3; one a sheet, but for long tables and the wide sheets of the starter. */
const PAGES: Readonly<Record<Sample, number>> = { 'cable-schedule': 12, estimator: 5, engineer: 9, checker: 5, starter: 16 };

const office = spawnSync('soffice', ['--version']).status === 0;
if (!office) console.warn('LibreOffice (soffice) is not on this machine: the samples are not opened with it');
const withOffice = office ? describe : describe.skip;

withOffice('LibreOffice, which does not know our functions', () => {
  const folder = mkdtempSync(path.join(os.tmpdir(), 'joulewright-samples-'));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  const convert = (to: 'pdf' | 'xlsx'): void => {
    const profile = `-env:UserInstallation=file://${folder}/profile`;
    const { status, stderr } = spawnSync('soffice', [profile, '--headless', '--convert-to', to, '--outdir', path.join(folder, to), ...SAMPLES.map(fileOf)], { encoding: 'utf8', timeout: 150_000 });
    if (status !== 0) throw new Error(`soffice: ${stderr}`);
  };

  test('prints each workbook on as many pages as meant', () => {
    convert('pdf');
    const pages = Object.fromEntries(SAMPLES.map((sample) => {
      const pdf = readFileSync(path.join(folder, 'pdf', `${sample}.pdf`), 'latin1');
      return [sample, pdf.match(/\/Type\s*\/Page\b(?!s)/g)?.length ?? 0];
    }));
    expect(pages).toEqual(PAGES);
  }, 180_000);

  test('opens each workbook with the stored values as they are', () => {
    convert('xlsx');
    for (const sample of SAMPLES) {
      const ours = bookOf(sample);
      const theirs = openBook(new Uint8Array(readFileSync(path.join(folder, 'xlsx', `${sample}.xlsx`))), customFunctions);
      const differing = ours.formulaCells.filter(({ sheet, address, value }) => !sameValue(theirs.value(sheet.name, address), value));
      expect(differing.map(({ sheet, address, value }) => `${sample} ${sheet.name}!${address} ${String(value)} ${String(theirs.value(sheet.name, address))}`)).toEqual([]);
    }
  }, 180_000);
});
