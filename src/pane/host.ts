import type { HostTraits } from '../functions/kernel/call';
import type { ExplainedCell, ValueSource } from '../sheet/explain/explanation';

/** What is selected in the sheet. */
export type Selection =
  | { readonly kind: 'nothing' }
  /** The active cell; `within` names the whole selection where it is larger, `spilledFrom` the cell that holds its formula. */
  | ({ readonly kind: 'cell'; readonly address: string; readonly within?: string; readonly spilledFrom?: string } & ExplainedCell)
  /** The host cannot say what is selected; the words are for the reader. */
  | { readonly kind: 'trouble'; readonly words: string };

/** What the pane needs of the program it stands beside. */
export interface PaneHost {
  readonly traits: HostTraits;
  readonly source: ValueSource;
  /** Tells what is selected, at once and after every change; gives a function that ends it. */
  watch(listener: (selection: Selection) => void): () => void;
}
