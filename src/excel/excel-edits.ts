import { type CellEdit, DONE, type Done, type FormulaCell, type PaneHost, type Refused, refused } from '../pane/host';
import { asTypedText } from '../pane/typed-text';
import { addressOf, parseBox } from '../sheet/xlsx/address';
import { CELLS_AT_ONCE, cellOfRange, excelValues, inExcel, knowsSpills } from './excel-values';
import { isKnown, troubleOf } from './excel-trouble';

/** What the pane reads of whole sheets and does in them. */

/** Runs a batch that changes the workbook; whatever it does becomes one step of undo where this Excel knows how. */
export const changing = <T>(work: (context: Excel.RequestContext) => Promise<T>): Promise<T> =>
  isKnown('1.20') ? Excel.run({ delayForCellEdit: true, mergeUndoGroup: true }, work) : inExcel(work);

async function sheets(): Promise<readonly string[]> {
  return inExcel(async (context) => {
    const { worksheets } = context.workbook;
    worksheets.load('items/name');
    await context.sync();
    return worksheets.items.map(({ name }) => name);
  });
}

const isFormula = (text: unknown): text is string => typeof text === 'string' && text.startsWith('=');

async function formulasOf(context: Excel.RequestContext, worksheet: Excel.Worksheet, sheet: string): Promise<FormulaCell[]> {
  const used = worksheet.getUsedRangeOrNullObject(true);
  used.load('rowIndex,columnIndex,rowCount,columnCount');
  await context.sync();
  if (used.isNullObject) return [];
  const found: FormulaCell[] = [];
  const height = Math.max(1, Math.floor(CELLS_AT_ONCE / used.columnCount));
  for (let top = used.rowIndex; top < used.rowIndex + used.rowCount; top += height) {
    const piece = worksheet.getRangeByIndexes(top, used.columnIndex, Math.min(height, used.rowIndex + used.rowCount - top), used.columnCount);
    piece.load('formulas,values,valueTypes');
    await context.sync();
    piece.formulas.forEach((cells: unknown[], r) => cells.forEach((formula, c) => {
      if (!isFormula(formula)) return;
      const [row, column] = [top + r, used.columnIndex + c];
      found.push({ sheet, row, column, address: addressOf(row, column), formula, value: cellOfRange(piece.values[r]![c], String(piece.valueTypes[r]![c])) });
    }));
  }
  return withoutSpilled(context, worksheet, found);
}

/** Excel tells the formula of a spill in every cell that it fills; here it counts once, where it stands. */
async function withoutSpilled(context: Excel.RequestContext, worksheet: Excel.Worksheet, cells: FormulaCell[]): Promise<FormulaCell[]> {
  if (!knowsSpills()) return cells;
  const at = new Map(cells.map((cell) => [`${cell.row},${cell.column}`, cell.formula]));
  const doubtful = cells.filter(({ row, column, formula }) => at.get(`${row - 1},${column}`) === formula || at.get(`${row},${column - 1}`) === formula);
  const parents = doubtful.map((cell) => {
    const parent = worksheet.getRangeByIndexes(cell.row, cell.column, 1, 1).getSpillParentOrNullObject();
    parent.load('rowIndex,columnIndex');
    return { cell, parent };
  });
  await context.sync();
  const spilled = new Set(parents.filter(({ cell, parent }) => !parent.isNullObject && (parent.rowIndex !== cell.row || parent.columnIndex !== cell.column)).map(({ cell }) => cell));
  return cells.filter((cell) => !spilled.has(cell));
}

async function formulaCells(sheet?: string): Promise<readonly FormulaCell[]> {
  return inExcel(async (context) => {
    const { worksheets } = context.workbook;
    worksheets.load('items/name');
    await context.sync();
    const found: FormulaCell[] = [];
    for (const { name } of worksheets.items) {
      if (sheet !== undefined && name.toLowerCase() !== sheet.toLowerCase()) continue;
      found.push(...(await formulasOf(context, worksheets.getItem(name), name)));
    }
    return found;
  });
}

async function select(sheet: string, range: string): Promise<Done> {
  return inExcel(async (context): Promise<Done> => {
    const worksheet = context.workbook.worksheets.getItemOrNullObject(sheet);
    worksheet.load('visibility');
    await context.sync();
    if (worksheet.isNullObject) return refused(`There is no sheet ${sheet}.`);
    if (worksheet.visibility !== 'Visible') return refused(`The sheet ${sheet} is hidden. Show it first.`);
    worksheet.activate();
    worksheet.getRange(range).select();
    await context.sync();
    return DONE;
  }).catch(troubleOf);
}

/** Why one of the cells may not be written; undefined where all may. */
async function whyFixed(context: Excel.RequestContext, edits: readonly CellEdit[]): Promise<Refused | undefined> {
  const names = [...new Set(edits.map(({ sheet }) => sheet))];
  const worksheets = names.map((name) => context.workbook.worksheets.getItemOrNullObject(name));
  for (const worksheet of worksheets) worksheet.load('name');
  await context.sync();
  const lost = worksheets.findIndex(({ isNullObject }) => isNullObject);
  if (lost >= 0) return refused(`There is no sheet ${names[lost]}.`);
  for (const worksheet of worksheets) worksheet.protection.load('protected');
  await context.sync();
  const guarded = edits.filter(({ sheet }) => worksheets[names.indexOf(sheet)]!.protection.protected);
  const locks = guarded.map(({ sheet, address }) => {
    const { protection } = context.workbook.worksheets.getItem(sheet).getRange(address).format;
    protection.load('locked');
    return { sheet, address, protection };
  });
  if (locks.length > 0) await context.sync();
  const locked = locks.find(({ protection }) => protection.locked !== false);
  return locked && refused(`${locked.address} is locked: the sheet ${locked.sheet} is protected. Unprotect it in Excel first.`);
}

async function write(edits: readonly CellEdit[]): Promise<Done> {
  return changing(async (context): Promise<Done> => {
    const why = await whyFixed(context, edits);
    if (why) return why;
    for (const edit of edits) {
      const range = context.workbook.worksheets.getItem(edit.sheet).getRange(edit.address);
      if ('formula' in edit) range.formulas = [[edit.formula]];
      else range.values = [[typeof edit.value === 'string' ? asTypedText(edit.value) : edit.value ?? '']];
    }
    await context.sync();
    return DONE;
  }).catch(troubleOf);
}

/** Excel hands a file over in pieces. */
function file(): Promise<Uint8Array | Refused> {
  const { document } = Office.context;
  const succeeded = <T>({ status }: Office.AsyncResult<T>): boolean => String(status) === 'succeeded';
  const slice = (from: Office.File, index: number): Promise<Uint8Array> =>
    new Promise((resolve, reject) => from.getSliceAsync(index, (result) => (succeeded(result) ? resolve(new Uint8Array(result.value.data as number[])) : reject(result.error))));
  return new Promise((resolve) => {
    document.getFileAsync(Office.FileType.Compressed, { sliceSize: 1 << 22 }, (result) => {
      if (!succeeded(result)) return resolve(refused('Excel did not hand the workbook over. Save it once, then try again.'));
      const opened = result.value;
      const read = async (): Promise<Uint8Array> => {
        const bytes = new Uint8Array(opened.size);
        let place = 0;
        for (let index = 0; index < opened.sliceCount; index += 1) {
          const piece = await slice(opened, index);
          bytes.set(piece, place);
          place += piece.length;
        }
        return bytes;
      };
      void read().catch(troubleOf).then((bytes) => opened.closeAsync(() => resolve(bytes)));
    });
  });
}

export const excelEdits: Pick<PaneHost, 'sheets' | 'read' | 'formulaCells' | 'select' | 'write' | 'file'> = {
  sheets,
  read: async (sheet, range) => {
    const box = parseBox(range);
    if (!box || (await excelValues.used(sheet)) === undefined) throw new RangeError(`${sheet}!${range} is no range of this workbook`);
    return excelValues.cells(sheet, box);
  },
  formulaCells,
  select,
  write,
  file,
};
