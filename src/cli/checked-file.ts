import { createHash } from 'node:crypto';
import { catalogue } from '../sheet/catalogue';
import { type Checked, type FindingClass, checkWorkbook } from '../sheet/check';
import { type JsonCell, jsonCell } from './cell-text';
import { readInput } from './files';
import { noticesOf } from './workbook-notices';

/** A finding as it goes into files and from thread to thread. */
export interface FileFinding {
  readonly class: FindingClass;
  readonly kind: string;
  readonly sheet: string;
  readonly cell: string;
  readonly formula: string | null;
  readonly stored: JsonCell;
  readonly computed: JsonCell;
  /** Per cent of the computed value. */
  readonly difference: number | null;
  readonly reason: string;
  readonly clause: string;
}

/** What became of one file. */
export interface CheckedFile {
  readonly file: string;
  /** Why it could not be checked; undefined where it was. */
  readonly error?: string;
  readonly sha256?: string;
  readonly sheets: readonly string[];
  readonly notices: readonly string[];
  readonly formulas: number;
  readonly checked: number;
  readonly notChecked: number;
  readonly findings: readonly FileFinding[];
  /** Formulas that could not be computed anew. */
  readonly notRecomputed: number;
  /** Stored values that change when the whole workbook is computed anew. */
  readonly changes: readonly { readonly sheet: string; readonly cell: string; readonly stored: JsonCell; readonly computed: JsonCell }[];
}

export const notReadable = (file: string, error: string): CheckedFile =>
  ({ file, error, sheets: [], notices: [], formulas: 0, checked: 0, notChecked: 0, findings: [], changes: [], notRecomputed: 0 });

/** Reads and checks one file; what goes wrong with it is told in the result. */
export async function checkFile(file: string, tolerance: number): Promise<CheckedFile> {
  try {
    const bytes = await readInput(file);
    return { file, sha256: createHash('sha256').update(bytes).digest('hex'), ...plain(checkWorkbook(bytes, catalogue, { tolerance })) };
  } catch (error) {
    const words = error instanceof Error ? error.message : String(error);
    return notReadable(file, words.startsWith(`${file}: `) ? words.slice(file.length + 2) : words);
  }
}

const plain = ({ formulas, checked, notChecked, findings, changes, notRecomputed, facts }: Checked): Omit<CheckedFile, 'file'> => ({
  sheets: facts.sheets.map(({ name }) => name), notices: noticesOf(facts), formulas, checked, notChecked, notRecomputed,
  findings: findings.map((finding) => ({ ...finding, stored: jsonCell(finding.stored), computed: jsonCell(finding.computed) })),
  changes: changes.map(({ sheet, address, was, now }) => ({ sheet, cell: address, stored: jsonCell(was), computed: jsonCell(now) })),
});

export const countOf = (files: readonly CheckedFile[], wanted: FindingClass): number =>
  files.reduce((sum, { findings }) => sum + findings.reduce((own, each) => own + (each.class === wanted ? 1 : 0), 0), 0);
