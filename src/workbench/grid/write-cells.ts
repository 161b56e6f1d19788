import type { GridLibrary, Model } from './library';

/** Writing several cells as one step of undo: the grid makes one step of whatever happens within one command of a page. */

export interface GridEdit {
  readonly sheetId: string;
  readonly row: number;
  readonly col: number;
  readonly content: string;
}

const PLUGIN = 'writeCells';
const WRITE_CELLS = 'WRITE_CELLS';

export function installWriting(grid: GridLibrary): void {
  const { featurePluginRegistry } = grid.registries;
  if (featurePluginRegistry.contains(PLUGIN)) return;

  class CellWriter extends grid.UIPlugin {
    static override layers = [];
    static override getters = [];
    override handle(given: Parameters<InstanceType<GridLibrary['UIPlugin']>['handle']>[0]): void {
      const command = given as unknown as { type: string; edits?: readonly GridEdit[] };
      if (command.type === WRITE_CELLS) for (const edit of command.edits ?? []) this.dispatch('UPDATE_CELL', { ...edit });
    }
  }

  featurePluginRegistry.add(PLUGIN, CellWriter as unknown as Parameters<typeof featurePluginRegistry.add>[1]);
}

/** Whether the grid took the edits. */
export function writeCells(model: Model, edits: readonly GridEdit[]): boolean {
  const dispatch = model.dispatch as unknown as (type: string, payload: object) => { isSuccessful: boolean };
  return dispatch(WRITE_CELLS, { edits }).isSuccessful;
}
