import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import ExcelJS from 'exceljs';

/** A cell of a workbook that some other program writes: a constant, or a formula in the form of files with the result it stores. */
export type Written = number | string | { readonly formula: string; readonly result: number | string };
export type WrittenSheet = Readonly<Record<string, Written>>;

/** By the library that our samples are written with. */
export async function byExceljs(name: string, cells: WrittenSheet): Promise<Uint8Array> {
  const workbook = new ExcelJS.Workbook();
  const sheet = workbook.addWorksheet(name);
  for (const [address, written] of Object.entries(cells)) sheet.getCell(address).value = typeof written === 'object' ? { ...written } : written;
  return new Uint8Array(await workbook.xlsx.writeBuffer());
}

/** The program runs by itself: its package holds WebAssembly, which the test runner does not load. */
const PROGRAM = `
import { readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
const [out, name, text] = process.argv.slice(1);
const folder = path.join(path.dirname(createRequire(path.resolve('package.json')).resolve('wasm-xlsxwriter')), '../web');
const writer = await import(pathToFileURL(path.join(folder, 'wasm_xlsxwriter.js')).href);
writer.initSync({ module: readFileSync(path.join(folder, 'wasm_xlsxwriter_bg.wasm')) });
const workbook = new writer.Workbook();
const sheet = workbook.addWorksheet();
sheet.setName(name);
for (const [address, cell] of Object.entries(JSON.parse(text))) {
  const [, letters, row] = /^([A-Z]+)([0-9]+)$/.exec(address);
  const column = [...letters].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;
  sheet.write(Number(row) - 1, column, typeof cell === 'object' ? new writer.Formula('=' + cell.formula).setResult(String(cell.result)) : cell);
}
writeFileSync(out, workbook.saveToBufferSync());
`;

/** By a writer of another family (Rust). */
export function byXlsxwriter(name: string, cells: WrittenSheet): Uint8Array {
  const folder = mkdtempSync(path.join(tmpdir(), 'written-'));
  try {
    const out = path.join(folder, 'book.xlsx');
    execFileSync(process.execPath, ['--input-type=module', '-e', PROGRAM, out, name, JSON.stringify(cells)], { cwd: path.resolve(__dirname, '../..'), stdio: ['ignore', 'ignore', 'pipe'] });
    return new Uint8Array(readFileSync(out));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
