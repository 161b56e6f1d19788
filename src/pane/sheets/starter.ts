import { parseBox, addressOf } from '../../sheet/xlsx/address';
import type { SheetPlan } from '../sheet-plan';

/** The starter's sheets, made from the builder of the starter workbook; loaded only where somebody looks. */
export async function starterPlans(): Promise<readonly SheetPlan[]> {
  const { default: plans } = await import('./generated/starter.json');
  return plans as unknown as readonly SheetPlan[];
}

export interface PlannedColumn {
  readonly name: string;
  readonly unit: string;
  readonly worked: boolean;
}

/** Columns of the tables of a sheet: heading, the unit above it, and whether it is typed or worked out. */
export function columnsOf({ cells, tables = [] }: SheetPlan): PlannedColumn[] {
  const at = new Map(cells.map((cell) => [cell.range.split(':')[0]!, cell]));
  return tables.flatMap(({ range }) => {
    const { top, left, right } = parseBox(range)!;
    return Array.from({ length: right - left + 1 }, (_, i): PlannedColumn => ({
      name: String(at.get(addressOf(top, left + i))?.value ?? ''),
      unit: String(at.get(addressOf(top - 1, left + i))?.value ?? ''),
      worked: ['worked', 'words', 'carried'].includes(at.get(addressOf(top + 1, left + i))?.look ?? '') && at.get(addressOf(top + 1, left + i))?.formula !== undefined,
    }));
  });
}

/** What a sheet is for, as its title says. */
export const titleOf = ({ name, cells }: SheetPlan): string => {
  const title = String(cells.find(({ range }) => range === 'A1')?.value ?? '');
  return title.includes(': ') ? title.slice(title.indexOf(': ') + 2) : PURPOSES[name] ?? '';
};

const PURPOSES: Readonly<Record<string, string>> = {
  Boards: 'fault levels, assemblies, forces, arcs', Cables: 'load, drop, withstand, disconnection', Devices: 'settings, duty, selectivity',
  Lists: 'words and sizes to choose from',
};
