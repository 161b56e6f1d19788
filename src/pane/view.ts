import type { PaneHost } from './host';

/** What a view is handed of the pane around it. */
export interface Frame {
  /** Shows another view; `subject` is for it, such as the name of a function. */
  open(view: string, subject?: string): void;
  /** Says one line to screen readers. */
  say(words: string): void;
  /** Calls `listener` each time this view comes into sight, with the subject it was opened with; once at once if it is in sight. */
  onShow(listener: (subject: string | undefined) => void): void;
  /** Calls `listener` each time another view takes its place. */
  onHide(listener: () => void): void;
}

/** One view of the pane. It is mounted when it is first shown and stays, hidden, while the pane stands. */
export interface View {
  readonly id: string;
  /** One short word for its tab. */
  readonly title: string;
  /** Fills the container; gives a function that takes the view down. */
  mount(container: HTMLElement, host: PaneHost, frame: Frame): () => void;
}
