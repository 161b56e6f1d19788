import type { GridLibrary } from './library';

/**
 * Keeps the grid to what Save can write back: contents of cells that may be changed. Everything else that the grid would
 * let one do is turned away before it happens, with words.
 */

/** What the guard asks the open file, and tells the page. */
export interface GuardRules {
  /** Why a cell may not be changed; undefined where it may. */
  whyFixed(sheet: string, row: number, column: number): string | undefined;
  /** Something was turned away. */
  refused(words: string): void;
}

/** Under this name the rules stand in the grid's settings. */
export const GUARD = 'guard';

type Command = { type: string; sheetId?: string; row?: number; col?: number; target?: readonly Zone[]; content?: string; style?: unknown; format?: unknown };
type CorePlugin = InstanceType<GridLibrary['CorePlugin']>;
type UIPlugin = InstanceType<GridLibrary['UIPlugin']>;
type Verdict = ReturnType<CorePlugin['allowDispatch']>;
type Zone = { top: number; left: number; bottom: number; right: number };

/** Commands on the workbook itself that are let through: contents, and what only changes the view. */
const CONTENT = new Set(['UPDATE_CELL', 'CLEAR_CELL', 'CLEAR_CELLS', 'DELETE_CONTENT']);
const VIEW = new Set(['UPDATE_CELL_POSITION', 'RESIZE_COLUMNS_ROWS', 'SET_GRID_LINES_VISIBILITY', 'FOLD_HEADER_GROUP', 'UNFOLD_HEADER_GROUP', 'FOLD_ALL_HEADER_GROUPS', 'UNFOLD_ALL_HEADER_GROUPS', 'UNFOLD_HEADER_GROUPS_IN_ZONE', 'FOLD_HEADER_GROUPS_IN_ZONE']);

/** Borders that filling and pasting would bring along: left away without a word, as other formats are. */
const BROUGHT_ALONG = new Set(['SET_BORDER', 'SET_BORDERS_ON_TARGET']);

const NOT_KEPT: readonly (readonly [RegExp, string])[] = [
  [/SHEET/, 'Sheets are added, renamed, moved and removed in a spreadsheet program only; Save does not keep that.'],
  [/COLUMNS_ROWS|^FREEZE|^UNFREEZE|HEADERS/, 'Rows and columns stay as they are in the file; Save writes contents of cells only.'],
  [/MERGE/, 'Merged cells stay as they are in the file; Save writes contents of cells only.'],
  [/TABLE/, 'Tables stay as they are in the file; Save writes contents of cells only.'],
  [/CONDITIONAL|VALIDATION/, 'Rules for formats and input stay as they are in the file; Save writes contents of cells only.'],
  [/FORMAT|STYLE|BORDER/, 'Formats stay as they are in the file; Save writes contents of cells only.'],
  [/NAMED_RANGE/, 'Defined names stay as they are in the file; Save writes contents of cells only.'],
  [/CHART|FIGURE|IMAGE|CAROUSEL|PIVOT/, 'Charts, pictures and pivot tables are made in a spreadsheet program; Save would lose them.'],
];
const OTHERWISE = 'That is left to a spreadsheet program; Save writes contents of cells only.';
const notKept = (type: string): string => NOT_KEPT.find(([pattern]) => pattern.test(type))?.[1] ?? OTHERWISE;

/** Commands of the page that move cells about. */
const MOVES: Readonly<Record<string, string>> = {
  CUT: 'Cut and paste would move references in other formulas. Copy, paste, then clear the old cells instead.',
  INSERT_CELL: 'Cells are not shifted here; Save writes contents of cells only.',
  DELETE_CELL: 'Cells are not shifted here; Save writes contents of cells only.',
  SORT_CELLS: 'Sorting is left to a spreadsheet program: formulas elsewhere would go on pointing to the old places.',
  SPLIT_TEXT_INTO_COLUMNS: OTHERWISE,
  REMOVE_DUPLICATES: OTHERWISE,
  UPDATE_FILTER: 'Filters stay as they are in the file.',
  SET_FORMATTING_WITH_PIVOT: notKept('FORMAT'),
  PAINT_FORMAT: notKept('FORMAT'),
  SET_DECIMAL: notKept('FORMAT'),
};

/** The grid only shows that a command was turned away; which of its reasons is given does not matter. */
const REFUSED = 'Readonly' as Verdict;
const ALLOWED = 'Success' as Verdict;

/** More cells than these are not looked at one by one: an area so large is beyond what anyone edits at once. */
const CELLS_AT_MOST = 100_000;

export function installGuard(grid: GridLibrary): void {
  const { corePluginRegistry, featurePluginRegistry, clipboardHandlersRegistries } = grid.registries;
  const rulesOf = (config: { custom: Readonly<Record<string, unknown>> }): GuardRules => config.custom[GUARD] as GuardRules;
  const refuse = (rules: GuardRules, words: string): Verdict => {
    rules.refused(words);
    return REFUSED;
  };

  class CoreGuard extends grid.CorePlugin {
    static override getters = [];
    private readonly rules: GuardRules;

    constructor(config: ConstructorParameters<GridLibrary['CorePlugin']>[0]) {
      super(config);
      this.rules = rulesOf(config);
    }

    override allowDispatch(given: Parameters<CorePlugin['allowDispatch']>[0]): Verdict {
      const command = given as unknown as Command;
      if (VIEW.has(command.type)) return ALLOWED;
      if (BROUGHT_ALONG.has(command.type)) return REFUSED;
      if (!CONTENT.has(command.type)) return refuse(this.rules, notKept(command.type));
      if (command.type === 'UPDATE_CELL' && !withoutLooks(command)) return refuse(this.rules, notKept('FORMAT'));
      const words = this.whyFixed(command);
      return words === undefined ? ALLOWED : refuse(this.rules, words);
    }

    private whyFixed(command: Command): string | undefined {
      const sheet = this.getters.getSheetName(command.sheetId!);
      if (command.row !== undefined && command.col !== undefined) return this.rules.whyFixed(sheet, command.row, command.col);
      let count = 0;
      for (const { top, left, bottom, right } of command.target ?? []) {
        for (let row = top; row <= bottom; row++) {
          for (let column = left; column <= right; column++) {
            if (++count > CELLS_AT_MOST) return 'That is too large an area to change at once.';
            if (this.getters.getCell({ sheetId: command.sheetId!, row, col: column }) === undefined) continue;
            const words = this.rules.whyFixed(sheet, row, column);
            if (words !== undefined) return words;
          }
        }
      }
      return undefined;
    }
  }

  class PageGuard extends grid.UIPlugin {
    static override layers = [];
    static override getters = [];
    private readonly rules: GuardRules;

    constructor(config: ConstructorParameters<GridLibrary['UIPlugin']>[0]) {
      super(config);
      this.rules = rulesOf(config);
    }

    override allowDispatch({ type }: Parameters<UIPlugin['allowDispatch']>[0]): Verdict {
      const words = MOVES[type];
      return words === undefined ? ALLOWED : refuse(this.rules, words);
    }
  }

  corePluginRegistry.add('saveGuard', CoreGuard as unknown as Parameters<typeof corePluginRegistry.add>[1]);
  featurePluginRegistry.add('saveGuard', PageGuard as unknown as Parameters<typeof featurePluginRegistry.add>[1]);
  // Paste carries contents only.
  for (const name of clipboardHandlersRegistries.cellHandlers.getKeys()) if (!['cell', 'references'].includes(name)) clipboardHandlersRegistries.cellHandlers.remove(name);
}

/** Takes formats out of a command, as typed dates and pasted cells bring them along; false where nothing else was in it. */
function withoutLooks(command: Command): boolean {
  delete command.style;
  delete command.format;
  return 'content' in command;
}
