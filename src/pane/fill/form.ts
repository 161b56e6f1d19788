import { NAMESPACE } from '../../functions/kernel/catalogue';
import type { Entry } from '../../functions/kernel/declaration';
import type { SheetTable } from '../../sheet/calculate/structured';
import { addressOf, parseAddress } from '../../sheet/xlsx/address';
import { button } from '../controls';
import { element, formulaCode } from '../dom';
import { callSection } from '../explain/call-section';
import type { PaneHost, Refused, Selection } from '../host';
import { placeOf } from '../places';
import { noteUse } from '../session';
import type { Frame } from '../view';
import { type CallArguments, callText } from './call-text';
import { ArgumentField } from './field';
import type { FieldReading } from './field-text';
import { type Preview, previewOf } from './preview';
import { type Target, referenceTo, sheetPrefix } from './reference';

type SelectedCell = Extract<Selection, { kind: 'cell' }>;

/** Typing comes to rest before the sheet is asked again. */
const REST_MS = 150;

const targetText = ({ sheet, row, column }: Target): string => `${sheetPrefix(sheet)}${addressOf(row, column)}`;
const sameTarget = (a: Target, b: Target): boolean => a.sheet === b.sheet && a.row === b.row && a.column === b.column;

export class FillForm {
  readonly node: HTMLElement;
  private readonly fields: readonly ArgumentField[];
  private target: Target | undefined;
  private names: ReadonlySet<string> = new Set();
  private tables: readonly SheetTable[] = [];
  private turn = 0;
  private waiting: ReturnType<typeof setTimeout> | undefined;
  private preview: Preview | undefined;
  private formula = '';

  private readonly place = element('span', { class: 'jw-target' });
  private readonly replaced = element('p', { class: 'jw-note' });
  private readonly retarget: HTMLButtonElement;
  private readonly result = element('div', { class: 'jw-preview' });
  private readonly outcome = element('div', { class: 'jw-outcome' });

  constructor(private readonly entry: Entry, private readonly host: PaneHost, private readonly frame: Frame, private readonly selection: () => SelectedCell | undefined) {
    const { name, summary, order } = entry.member;
    const events = { changed: () => this.soon(), picked: () => this.picked() };
    this.fields = order.map(([parameter, kind]) => new ArgumentField(parameter, kind, events));
    this.retarget = button('Use the selected cell', () => this.useSelected(), 'jw-button jw-small');
    const write = element('button', { class: 'jw-button jw-main' }, 'Write formula');
    write.type = 'submit';
    const form = element('form', { class: 'jw-form' },
      ...this.fields.map(({ node }) => node),
      this.result,
      element('p', { class: 'jw-actions' }, write, button('Find another', () => this.frame.open('find', ''), 'jw-button')),
      this.outcome,
    );
    form.noValidate = true;
    form.addEventListener('submit', (event) => {
      event.preventDefault();
      void this.write();
    });
    this.outcome.setAttribute('role', 'status');
    this.node = element('div', { class: 'jw-fill' },
      element('h2', { class: 'jw-name' }, `${NAMESPACE}.${name}`),
      element('p', { class: 'jw-summary' }, summary),
      element('p', { class: 'jw-into' }, 'Into ', this.place, this.retarget),
      this.replaced,
      form,
    );
  }

  /** Takes the selected cell as the target and, where the formula of a cell is to be changed, its arguments. */
  begin(given: CallArguments | undefined): void {
    noteUse(this.entry.member.name);
    this.useSelected();
    void this.learn().then(() => {
      if (given) for (const field of this.fields) field.fill(given[field.name] ?? [], this.isName);
      this.soon();
    });
    this.fields[0]?.focus();
  }

  /** Another cell is selected, or something in the sheet has changed. */
  selected(): void {
    if (!this.target) this.useSelected();
    this.showTarget();
    this.soon();
  }

  end(): void {
    this.turn += 1;
    clearTimeout(this.waiting);
  }

  private readonly isName = (name: string): boolean => this.names.has(name.toLowerCase());

  /** Names and tables by which a field may refer to cells. */
  private async learn(): Promise<void> {
    const { source } = this.host;
    const [names, tables] = await Promise.all([source.names(), source.tables()]).catch(() => [[], []] as const);
    this.tables = tables;
    this.names = new Set([...names, ...tables].map(({ name }) => name.toLowerCase()));
  }

  private get selectedTarget(): Target | undefined {
    const cell = this.selection();
    const place = cell && parseAddress(cell.spilledFrom ?? cell.address);
    return cell && place && { sheet: cell.sheet, ...place };
  }

  private useSelected(): void {
    this.target = this.selectedTarget;
    this.showTarget();
    this.soon();
  }

  private showTarget(): void {
    const { target, selectedTarget } = this;
    this.place.textContent = target ? targetText(target) : 'no cell: select one';
    this.retarget.hidden = !selectedTarget || (target !== undefined && sameTarget(target, selectedTarget));
  }

  private picked(): string | undefined {
    const cell = this.selection();
    const place = cell && placeOf(cell);
    if (!place || !this.target) {
      this.tell('Select one cell or one range first.');
      return undefined;
    }
    return referenceTo(place.sheet, place.box, this.target, this.tables);
  }

  private soon(): void {
    clearTimeout(this.waiting);
    this.waiting = setTimeout(() => void this.work(), REST_MS);
  }

  /** Reads the fields and shows what the formula would give. */
  private async work(): Promise<void> {
    clearTimeout(this.waiting);
    this.turn += 1;
    const mine = this.turn;
    const readings = new Map(this.fields.map((field) => [field.name, field.read(this.isName)]));
    this.formula = callText(this.entry.member, Object.fromEntries([...readings].map(([name, list]) => [name, list.map(({ argument }) => argument)])));
    const unreadable = this.fields.filter((field) => faultOf(readings.get(field.name)!) !== undefined);
    const { target } = this;
    const preview = unreadable.length > 0 || !target ? undefined : await previewOf(this.formula, this.fields.map(({ name }) => name), target, this.host).catch(() => undefined);
    const held = target && (await this.host.read(target.sheet, addressOf(target.row, target.column)).catch(() => [[null]]))[0]?.[0];
    if (mine !== this.turn) return;
    this.preview = preview;
    for (const field of this.fields) {
      const list = readings.get(field.name)!;
      field.say(faultOf(list) ?? (field.isBlank ? '' : preview?.faults.get(field.name) ?? ''));
      field.tell(list.map(({ argument }) => preview?.held.get(argument) ?? '').filter((each) => each !== '').join(', '));
    }
    this.replaced.textContent = held === null || held === undefined || held === '' || !target ? '' : `${addressOf(target.row, target.column)} holds something already, which writing replaces.`;
    this.show();
  }

  private get needed(): string[] {
    return this.fields.filter(({ kind, isBlank }) => !kind.optional && !kind.datum && isBlank).map(({ name }) => name);
  }

  private show(): void {
    const { preview, needed } = this;
    const open = [...this.result.querySelectorAll('details')].map((each) => each.open);
    const parts: (HTMLElement | undefined)[] = [formulaCode('jw-formula', this.formula, 'formula')];
    if (needed.length > 0) parts.push(element('p', { class: 'jw-note' }, `Still needed: ${needed.join(', ')}.`));
    else if (preview?.circular) parts.push(element('p', { class: 'jw-reason' }, 'The formula would read the cell that it is to stand in.'));
    else if (preview) {
      if (preview.reason !== '') parts.push(element('p', { class: 'jw-reason' }, preview.reason));
      const calls = [preview.call, ...preview.inner].filter((call) => call !== undefined);
      parts.push(...calls.map((call, place) => callSection(call, { open: open[place] ?? place === 0, alone: place === 0, knownReason: preview.faults.size > 0 ? call.reason : preview.reason })));
    }
    this.result.replaceChildren(...parts.filter((part) => part !== undefined));
    const { call } = preview ?? {};
    if (needed.length === 0 && call) this.frame.say([call.result, ...call.cautions].filter((part) => part !== '').join('. '));
  }

  private tell(words: string, ...more: readonly HTMLElement[]): void {
    this.outcome.replaceChildren(element('p', { class: 'jw-note' }, words), ...more);
  }

  private refuse({ words, instead }: Refused): void {
    this.outcome.replaceChildren(element('p', { class: 'jw-trouble' }, words), ...(instead ? [button(instead.label, () => instead.act())] : []));
  }

  private async write(): Promise<void> {
    await this.work();
    const { target, preview, needed } = this;
    const wrong = this.fields.find((field) => faultOf(field.read(this.isName)) !== undefined);
    const blank = this.fields.find(({ name }) => needed.includes(name));
    if (!target) return this.tell('Select the cell that the formula is to go into.');
    if (wrong ?? blank) {
      (wrong ?? blank)!.focus();
      return this.tell(wrong ? `${wrong.name} cannot be read.` : `Still needed: ${needed.join(', ')}.`);
    }
    if (preview?.circular) return this.tell('Not written: the formula would read the cell that it is to stand in. Use another cell.');
    if (preview?.call?.result === '#REF!') return this.tell(`Not written: ${[...preview.faults.values()][0] ?? preview.call.reason}. Take the cells anew for ${targetText(target)}.`);
    const address = addressOf(target.row, target.column);
    const done = await this.host.write([{ sheet: target.sheet, address, formula: this.formula }]);
    if (!done.done) return this.refuse(done);
    await this.host.select(target.sheet, address);
    this.tell(`Written into ${targetText(target)}. Undo in the sheet takes it back.`, button('Explain it', () => this.frame.open('explain'), 'jw-button'));
  }
}

const faultOf = (readings: readonly FieldReading[]): string | undefined => readings.find(({ fault }) => fault !== undefined)?.fault;
