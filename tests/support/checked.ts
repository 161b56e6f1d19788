import type { Cell } from '../../src/functions/kernel/cell';
import { catalogue } from '../../src/sheet/catalogue';
import { type CheckOptions, type Checked, type Finding, checkWorkbook } from '../../src/sheet/check';
import { customFunctions } from '../../src/sheet/custom-functions';
import { FormulaForms } from '../../src/sheet/formula/forms';
import { recompute } from '../../src/sheet/recompute';
import { parseAddress } from '../../src/sheet/xlsx/address';
import type { CellEdit } from '../../src/sheet/xlsx/edit';
import { patchWorkbook } from '../../src/sheet/xlsx/patch-workbook';
import { openWorkbook } from '../../src/sheet/xlsx/workbook';
import { SCHEDULE } from './schedule';
import { typedBook } from './sheet-text';

/** The workbook with every stored value that its formulas give, as a spreadsheet program leaves it. */
export const calculated = (bytes: Uint8Array): Uint8Array => recompute(bytes, customFunctions).bytes;

let correct: Uint8Array | undefined;
/** A schedule that is correct in every cell. */
export const schedule = (): Uint8Array => (correct ??= calculated(typedBook(SCHEDULE)));

const forms = new FormulaForms(catalogue.entries.map(({ member }) => member.name));

/** Cells by `Sheet!A1`: a value, or a formula as it is typed, with its =. */
export type Edits = Readonly<Record<string, Cell>>;

/** The workbook with cells typed over. */
export function edited(bytes: Uint8Array, edits: Edits): Uint8Array {
  const workbook = openWorkbook(bytes);
  const bySheet = new Map<string, Map<string, CellEdit>>();
  for (const [where, content] of Object.entries(edits)) {
    const [sheet, address] = where.split('!') as [string, string];
    const place = parseAddress(address)!;
    const table = workbook.facts.tables.find(({ sheet: of, box }) => of === sheet && place.row >= box.top && place.row <= box.bottom && place.column >= box.left && place.column <= box.right);
    const edit: CellEdit = typeof content === 'string' && content.startsWith('=') ? { value: null, formula: forms.toFile(content.slice(1), table?.name) } : { value: content, formula: null };
    const own = bySheet.get(sheet) ?? new Map<string, CellEdit>();
    bySheet.set(sheet, own.set(address, edit));
  }
  return patchWorkbook(workbook, bySheet);
}

/** The schedule after somebody typed into it and the program calculated. */
export const schedulePlanted = (edits: Edits): Uint8Array => calculated(edited(schedule(), edits));

/** Another value stored in a cell, whose formula stays. */
export const withStored = (bytes: Uint8Array, sheet: string, address: string, value: Cell): Uint8Array =>
  patchWorkbook(openWorkbook(bytes), new Map([[sheet, new Map([[address, { value }]])]]));

export const checked = (bytes: Uint8Array, options?: CheckOptions): Checked => checkWorkbook(bytes, catalogue, options);

/** `A kind Sheet!A1`, as tests compare them. */
export const told = (findings: readonly Finding[]): string[] => findings.map(({ class: of, kind, sheet, cell }) => `${of} ${kind} ${sheet}${cell === '' ? '' : `!${cell}`}`);
