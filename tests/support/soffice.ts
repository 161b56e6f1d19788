import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** Whether a second spreadsheet program is there to try files on; tests that want it are passed over without. */
export const hasOffice = ((): boolean => {
  try {
    execFileSync('soffice', ['--version'], { stdio: 'ignore', timeout: 60_000 });
    return true;
  } catch {
    return false;
  }
})();

/** The workbook as that program opens it and saves it again: .xlsx, or .csv of the first sheet. */
export function resaved(bytes: Uint8Array, as: 'xlsx' | 'csv' = 'xlsx'): Uint8Array {
  const folder = mkdtempSync(join(tmpdir(), 'resaved-'));
  try {
    writeFileSync(join(folder, 'book.xlsx'), bytes);
    execFileSync('soffice', [`-env:UserInstallation=file://${join(folder, 'profile')}`, '--headless', '--convert-to', as, '--outdir', join(folder, 'out'), join(folder, 'book.xlsx')], { stdio: 'ignore', timeout: 170_000 });
    return new Uint8Array(readFileSync(join(folder, 'out', `book.${as}`)));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
