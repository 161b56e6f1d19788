import type { PaneHost, Selection } from '../pane/host';
import { excelChart } from './excel-chart';
import { excelEdits } from './excel-edits';
import { insertSheets } from './excel-sheets';
import { codeOf } from './excel-trouble';
import { cellOfRange, excelValues, inExcel, knowsSpills } from './excel-values';

/** What the pane sees of Excel: the active cell and its changes. */

/** Cell or range without its sheet: `G2` of `'Cable list'!G2`. */
const withoutSheet = (address: string): string => address.slice(address.lastIndexOf('!') + 1);

/** A whole selection in words: each area without its sheet, long lists cut. */
function wholeSelection(addresses: string): string {
  // Addresses are separated by commas, and a sheet's name may hold commas of its own, inside quotes.
  const areas = (addresses.match(/(?:'(?:[^']|'')*'|[^,'])+/g) ?? []).map((each) => withoutSheet(each.trim()));
  return areas.length > 3 ? `${areas.slice(0, 3).join(', ')} and ${areas.length - 3} more` : areas.join(', ');
}

async function readSelection(context: Excel.RequestContext): Promise<Selection> {
  const active = context.workbook.getActiveCell();
  const whole = context.workbook.getSelectedRanges();
  const spillParent = knowsSpills() ? active.getSpillParentOrNullObject() : undefined;
  active.load('address,rowIndex,columnIndex,values,valueTypes,formulas');
  active.worksheet.load('name');
  whole.load('address');
  spillParent?.load('address,rowIndex,columnIndex,formulas');
  await context.sync();

  const address = withoutSheet(active.address);
  const within = wholeSelection(whole.address);
  const shown = { address, ...(within === address ? {} : { within }), sheet: active.worksheet.name, value: cellOfRange(active.values[0]![0], String(active.valueTypes[0]![0])) };
  const [row, column] = [active.rowIndex, active.columnIndex];
  const from = spillParent && !spillParent.isNullObject && (spillParent.rowIndex !== row || spillParent.columnIndex !== column) ? spillParent : undefined;
  if (from) {
    return {
      kind: 'cell', ...shown, row: from.rowIndex, column: from.columnIndex, formula: formulaOf(from.formulas), spilledFrom: withoutSheet(from.address),
      part: [row - from.rowIndex, column - from.columnIndex],
    };
  }
  return { kind: 'cell', ...shown, row, column, formula: formulaOf(active.formulas) };
}

/** `range.formulas` gives the value where there is no formula. */
const formulaOf = (formulas: readonly unknown[][]): string => {
  const text = formulas[0]?.[0];
  return typeof text === 'string' && text.startsWith('=') ? text : '';
};

const trouble = (error: unknown): Selection => {
  const code = codeOf(error);
  if (code === 'InvalidOperationInCellEditMode') return { kind: 'trouble', words: 'A cell is being edited. Press Enter or Esc, then select the cell again.' };
  return { kind: 'trouble', words: `Excel does not let the pane read this selection${code === '' ? '' : ` (${code})`}. Select a cell of a sheet.` };
};

/** Excel tells of every cell while it calculates; the pane reads once they come to rest. */
const REST_MS = 120;

export const excelHost: PaneHost = {
  traits: { blankArrivesAsZero: true },
  source: excelValues,
  ...excelEdits,
  insertSheets,
  chart: excelChart,
  watch(listener) {
    let stopped = false;
    let waiting: ReturnType<typeof setTimeout> | undefined;
    const endings: (() => Promise<void>)[] = [];

    const read = async (): Promise<void> => {
      const selection = await inExcel(readSelection).catch(trouble);
      if (!stopped) listener(selection);
    };
    const soon = async (): Promise<void> => {
      clearTimeout(waiting);
      waiting = setTimeout(() => void read(), REST_MS);
    };
    const register = async (): Promise<void> => {
      await inExcel(async (context) => {
        const { workbook } = context;
        const handlers = [workbook.onSelectionChanged.add(soon), workbook.worksheets.onChanged.add(soon), workbook.worksheets.onCalculated.add(soon)];
        await context.sync();
        for (const handler of handlers) endings.push(() => Excel.run(handler.context, async (own) => { handler.remove(); await own.sync(); }));
      });
      if (stopped) end();
    };
    const end = (): void => {
      for (const ending of endings.splice(0)) ending().catch(() => undefined);
    };

    listener({ kind: 'nothing' });
    void read();
    register().catch((error: unknown) => listener(trouble(error)));
    return () => {
      stopped = true;
      clearTimeout(waiting);
      end();
    };
  },
};
