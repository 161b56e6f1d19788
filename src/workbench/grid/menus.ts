import type { GridLibrary } from './library';

/** Leaves those entries in the grid's menus that do what Save can write back, or only change the view. */

const CELL_MENU = ['copy', 'paste', 'paste_special', 'delete', 'clear_cell', 'edit'];
const HEADER_MENU = ['copy', 'paste', 'paste_special', 'clear_column', 'clear_row', 'delete_column_content', 'delete_row_content'];
const TOP_MENUS: Readonly<Record<string, readonly string[]>> = {
  edit: ['undo', 'redo', 'copy', 'paste', 'paste_special', 'find_and_replace', 'delete'],
  view: ['show', 'zoom'],
};
const DEEPER = ['paste_special_value', 'paste_value_only', 'edit_delete_cell_values', 'view_gridlines', 'view_formulas'];

type Entry = { id?: string; children?: unknown };

function prune(entry: Entry, kept: readonly string[]): void {
  if (!Array.isArray(entry.children)) return;
  entry.children = entry.children.filter((child: Entry | (() => unknown)) => typeof child === 'function' || kept.includes(child.id ?? '') || /^zoom\d/.test(child.id ?? ''));
  for (const child of entry.children as Entry[]) prune(child, DEEPER);
}

export function pruneMenus({ registries }: GridLibrary): void {
  const { topbarMenuRegistry, cellMenuRegistry, colMenuRegistry, rowMenuRegistry } = registries;
  for (const key of topbarMenuRegistry.getKeys()) {
    const kept = TOP_MENUS[key];
    if (kept) prune(topbarMenuRegistry.get(key) as Entry, kept);
    else topbarMenuRegistry.remove(key);
  }
  for (const [registry, kept] of [[cellMenuRegistry, CELL_MENU], [colMenuRegistry, HEADER_MENU], [rowMenuRegistry, HEADER_MENU]] as const) {
    for (const key of registry.getKeys()) {
      if (kept.includes(key)) prune(registry.get(key) as Entry, DEEPER);
      else registry.remove(key);
    }
  }
}
