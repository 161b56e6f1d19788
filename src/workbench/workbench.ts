import { counted } from '../core/figure';
import { mountPane } from '../pane/pane';
import { WorkbookRefusal } from '../sheet/xlsx/refusal';
import { type Contents, contentsOf } from './grid/contents';
import { type Agreement, agreementOf } from './open/agreement';
import { type OpenFile, openFile } from './open/open-file';
import { download } from './page/download';
import { type GridView, type GridViewParts, mountGrid } from './page/grid-view';
import type { Page } from './page/page';
import { fetchSample, listSamples } from './page/samples';
import { gridPaneHost } from './pane-host';
import { savedFile } from './save/save-file';

const CONTENT_COMMANDS = new Set(['UPDATE_CELL', 'CLEAR_CELL', 'CLEAR_CELLS', 'DELETE_CONTENT', 'UNDO', 'REDO']);
const SHOWN_IN_LIST = 8;

const listed = (places: readonly string[]): string => (places.length > SHOWN_IN_LIST ? `${places.slice(0, SHOWN_IN_LIST).join(', ')} and ${places.length - SHOWN_IN_LIST} more` : places.join(', '));

/** The page at work: one open file at a time. */
export class Workbench {
  private file: OpenFile | undefined;
  /** The sample that the open file is, as the list of samples is to show it. */
  private sample = '';
  private before: Contents = new Map();
  private edited = false;
  private view: GridView | undefined;
  private endPane: (() => void) | undefined;

  constructor(private readonly page: Page, private readonly parts: GridViewParts) {}

  async start(): Promise<void> {
    const { page } = this;
    page.buttons.open.addEventListener('click', () => page.picker.click());
    page.buttons.save.addEventListener('click', () => this.save());
    page.buttons.fold.addEventListener('click', () => page.foldPane(!page.pane.hidden));
    page.picker.addEventListener('change', () => void this.pick(page.picker.files?.[0]).then(() => { page.picker.value = ''; }));
    page.sample.addEventListener('change', () => void this.openSample(page.sample.value));
    this.listenForDrops();
    window.addEventListener('keydown', (event) => this.shortcut(event), true);
    window.addEventListener('beforeunload', (event) => { if (this.edited) event.preventDefault(); });
    if (window.matchMedia('(max-width: 820px)').matches) page.foldPane(true);

    const samples = await listSamples();
    for (const { file, title } of samples) page.sample.append(new Option(title, file));
    if (samples[0]) {
      page.sample.value = samples[0].file;
      await this.openSample(samples[0].file);
    } else page.insteadOfGrid('Open a workbook file (.xlsx) with the button above, or drop it here.');
  }

  private listenForDrops(): void {
    const { page } = this;
    let depth = 0;
    const carriesFile = (event: DragEvent): boolean => event.dataTransfer?.types.includes('Files') ?? false;
    const count = (step: number) => (event: DragEvent): void => {
      if (!carriesFile(event)) return;
      depth = Math.max(0, depth + step);
      page.dropping(depth > 0);
    };
    window.addEventListener('dragenter', count(1));
    window.addEventListener('dragleave', count(-1));
    window.addEventListener('dragover', (event) => { if (carriesFile(event)) event.preventDefault(); });
    window.addEventListener('drop', (event) => {
      if (!carriesFile(event)) return;
      event.preventDefault();
      depth = 0;
      page.dropping(false);
      void this.pick(event.dataTransfer?.files[0]);
    });
  }

  private shortcut(event: KeyboardEvent): void {
    if (event.altKey) return;
    const key = `${event.ctrlKey || event.metaKey ? 'ctrl ' : ''}${event.shiftKey ? 'shift ' : ''}${event.key.toLowerCase()}`;
    const act = { ...this.keys, ...(this.takesTyping(event.target) ? {} : this.steps) }[key];
    if (!act) return;
    event.preventDefault();
    event.stopPropagation();
    act();
  }

  private readonly keys: Readonly<Record<string, () => void>> = {
    'ctrl s': () => this.save(), 'ctrl o': () => this.page.picker.click(), f6: () => this.page.nextPart(1), 'shift f6': () => this.page.nextPart(-1),
  };

  /** From the pane and the bar too these keys mean the sheet: left to itself the browser would undo in the grid's hidden field. */
  private readonly steps: Readonly<Record<string, () => void>> = {
    'ctrl z': () => void this.file?.model.dispatch('REQUEST_UNDO'), 'ctrl shift z': () => void this.file?.model.dispatch('REQUEST_REDO'), 'ctrl y': () => void this.file?.model.dispatch('REQUEST_REDO'),
  };

  private takesTyping(target: EventTarget | null): boolean {
    return target instanceof Element && (this.page.grid.contains(target) || target.matches('input, textarea, select, [contenteditable]'));
  }

  private mayLeave(): boolean {
    return !this.edited || window.confirm(`${this.file?.name ?? 'The file'} has changes that are not saved. Open another file and lose them?`);
  }

  private async openSample(file: string): Promise<void> {
    try {
      if (file !== '' && this.mayLeave() && await this.open(file, await fetchSample(file))) this.sample = file;
    } catch (thrown) {
      this.page.say(thrown instanceof Error ? thrown.message : 'The sample could not be loaded.', 'bad');
    }
    this.page.sample.value = this.sample;
  }

  private async pick(file: File | undefined): Promise<void> {
    if (!file || !this.mayLeave()) return;
    try {
      if (await this.open(file.name, new Uint8Array(await file.arrayBuffer()))) this.sample = '';
      this.page.sample.value = this.sample;
    } catch {
      this.page.say(`${file.name} could not be read.`, 'bad');
    }
  }

  /** Opens a file in the place of the open one; false where it is refused and all stays as it was. */
  private async open(name: string, bytes: Uint8Array): Promise<boolean> {
    const { page, parts } = this;
    page.say(`Opening ${name}…`);
    // The line above is to be seen before the work begins.
    await new Promise((resolve) => setTimeout(resolve, 20));
    let file: OpenFile;
    try {
      file = openFile(parts.grid, name, bytes, (words) => page.say(words, 'bad'));
    } catch (thrown) {
      page.say(`${name} was not opened. ${inWords(thrown)}`, 'bad');
      if (!this.file) page.insteadOfGrid(`${name} was not opened. ${inWords(thrown)}`);
      return false;
    }
    this.view?.end();
    this.endPane?.();
    this.file = file;
    this.before = contentsOf(file.model);
    this.setEdited(false);
    this.view = await mountGrid(parts, page.grid, file.model, (words) => page.say(words, 'bad'));
    this.endPane = mountPane(page.pane, gridPaneHost(file));
    file.model.on('command-dispatched', this, (command) => {
      if (!CONTENT_COMMANDS.has((command as { type: string }).type)) return;
      this.setEdited(true);
      page.say('');
    });
    page.showFile(name);
    page.buttons.save.disabled = false;
    this.tell(file, agreementOf(file));
    return true;
  }

  /** What was found on opening: agreement with the stored values, and what the reader ought to know. */
  private tell(file: OpenFile, { formulas, differing, notWorked }: Agreement): void {
    const notices = [...file.notices];
    if (differing.length > 0) notices.unshift(`${counted(differing.length, 'stored value')} ${differing.length === 1 ? 'differs' : 'differ'} from what is worked out and shown here: ${listed(differing)}.`);
    for (const { where, reason } of notWorked.slice(0, SHOWN_IN_LIST)) notices.push(`${where} is not worked out here, its stored value stays in the file: ${reason}.`);
    if (notWorked.length > SHOWN_IN_LIST) notices.push(`${notWorked.length - SHOWN_IN_LIST} more formulas are not worked out here; their stored values stay in the file.`);
    this.page.notices(notices);
    const same = formulas - differing.length - notWorked.length;
    this.page.say(formulas === 0 ? 'No formulas.' : same === formulas ? `${counted(formulas, 'formula')}, all as stored.` : `${counted(formulas, 'formula')}, ${same} as stored.`);
  }

  private save(): void {
    const { file, page } = this;
    if (!file) return;
    // A cell that is being typed into belongs to what is saved.
    (document.activeElement as HTMLElement | null)?.blur();
    try {
      const { bytes, edited, recalculated, kept, unformatted } = savedFile(file, this.before);
      download(file.name, bytes);
      this.setEdited(false);
      const plain = unformatted.length === 0 ? '' : ` Number formats are not written: ${listed(unformatted)} will show the bare number.`;
      const stands = kept === 0 ? '' : ` ${counted(kept, 'formula')} not worked out here kept the stored value.`;
      page.say(edited === 0 ? `Saved ${file.name} as it was: nothing is changed.` : `Saved ${file.name}: ${counted(edited, 'cell')} edited, ${counted(recalculated, 'formula')} recalculated.${stands}${plain}`);
    } catch (thrown) {
      page.say(`Not saved. ${inWords(thrown)}`, 'bad');
    }
  }

  private setEdited(edited: boolean): void {
    this.edited = edited;
    this.page.showEdited(edited);
  }
}

/** Refusals are words already; anything else is a fault of ours and must not show a trace. */
function inWords(thrown: unknown): string {
  if (thrown instanceof WorkbookRefusal) return thrown.message;
  console.error(thrown);
  return 'Something in it is not understood here.';
}
