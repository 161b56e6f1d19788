import { addressOf } from '../../sheet/xlsx/address';
import { button, choice } from '../controls';
import { element } from '../dom';
import type { PaneHost, Selection } from '../host';
import { jumpButton } from '../jump';
import type { Frame, View } from '../view';
import { checkPart } from './check-part';
import { KINDS, type Notice, type NoticeKind, type Scan, grouped, scan } from './scan';

const REST_MS = 500;
/** Sheets that take longer are looked over when asked, not after every change. */
const QUICK_MS = 400;

const TITLES: Readonly<Record<NoticeKind, string>> = { FAIL: 'FAIL', 'not shown': 'Not shown', error: 'Errors', caution: 'Cautions', 'not up to date': 'Not up to date' };
const PLURALS: Partial<Record<NoticeKind, string>> = { error: 'errors', caution: 'cautions' };
const CLASSES: Readonly<Record<NoticeKind, string>> = { FAIL: 'jw-bad', 'not shown': 'jw-care', error: 'jw-bad', caution: 'jw-care', 'not up to date': 'jw-care' };

/** Lists what is worth a look in the sheet or workbook, every item with a way to its cell. */
function mount(container: HTMLElement, host: PaneHost, frame: Frame): () => void {
  let sheet = '';
  let turn = 0;
  let quick = true;
  let shown = '';
  let stop: (() => void) | undefined;
  let waiting: ReturnType<typeof setTimeout> | undefined;

  const scope = choice([['sheet', 'this sheet'], ['book', 'the whole workbook']], 'sheet');
  scope.setAttribute('aria-label', 'Where to look');
  const again = button('Look again', () => void look());
  const state = element('p', { class: 'jw-note' });
  const list = element('div', { class: 'jw-notices' });
  const check = checkPart(host, frame);
  container.replaceChildren(element('p', { class: 'jw-with-button' }, scope, again), state, list, check.node);

  const wanted = (): string | undefined => (scope.value === 'sheet' ? sheet : undefined);
  async function look(): Promise<void> {
    turn += 1;
    const mine = turn;
    if (scope.value === 'sheet' && sheet === '') return;
    const began = performance.now();
    const progress = (done: number, of: number): void => void (state.textContent = `Looking: ${done} of ${of} formulas…`);
    const found = await scan(host, { sheet: wanted(), progress, stopped: () => mine !== turn }).catch(() => 'trouble' as const);
    if (mine !== turn || found === undefined) return;
    quick = performance.now() - began < QUICK_MS;
    if (found === 'trouble') {
      state.textContent = 'The sheet could not be read. Finish what is being typed in a cell, then look again.';
      return;
    }
    show(found);
  }
  function show(found: Scan): void {
    state.textContent = summary(found, wanted());
    // What did not change stays, with whatever has the focus in it.
    const now = JSON.stringify([wanted(), found]);
    if (now === shown) return;
    shown = now;
    list.replaceChildren(...KINDS.flatMap((kind) => kindPart(found.notices, kind, scope.value === 'book', host, frame)));
    frame.say(state.textContent);
  }
  const told = (selection: Selection): void => {
    if (selection.kind !== 'cell') return;
    const moved = selection.sheet !== sheet;
    sheet = selection.sheet;
    if (moved) check.show(wanted());
    clearTimeout(waiting);
    if (quick || (moved && scope.value === 'sheet')) waiting = setTimeout(() => void look(), REST_MS);
    else state.textContent = 'Something may have changed since: look again.';
  };
  scope.addEventListener('change', () => {
    check.show(wanted());
    void look();
  });
  const end = (): void => {
    turn += 1;
    clearTimeout(waiting);
    stop?.();
    stop = undefined;
  };
  frame.onShow(() => {
    stop ??= host.watch(told);
    void look();
  });
  frame.onHide(end);
  return end;
}

export const cautionsView: View = { id: 'cautions', title: 'Cautions', mount };

function summary({ notices, formulas }: Scan, sheet: string | undefined): string {
  const where = sheet === undefined ? 'the workbook' : sheet;
  const read = `${formulas} ${formulas === 1 ? 'formula' : 'formulas'} with JW functions in ${where}`;
  if (notices.length === 0) return `${read}: nothing to look at.`;
  const counts = KINDS.flatMap((kind) => {
    const count = notices.filter((notice) => notice.kind === kind).length;
    return count === 0 ? [] : [`${count} ${count > 1 ? PLURALS[kind] ?? kind : kind}`];
  });
  return `${read}: ${counts.join(', ')}.`;
}

function kindPart(notices: readonly Notice[], kind: NoticeKind, withSheet: boolean, host: PaneHost, frame: Frame): HTMLElement[] {
  const groups = grouped(notices, kind);
  if (groups.length === 0) return [];
  const count = groups.reduce((sum, group) => sum + group.notices.length, 0);
  const jump = ({ sheet, row, column }: Notice): HTMLElement => {
    const address = addressOf(row, column);
    return element('li', {}, jumpButton({ sheet, box: { top: row, left: column, bottom: row, right: column } }, withSheet ? `${sheet}!${address}` : address, host, frame));
  };
  return [
    element('h2', { class: CLASSES[kind] }, `${TITLES[kind]} `, element('span', { class: 'jw-count' }, String(count))),
    element('ul', { class: 'jw-list' }, ...groups.map(({ words, notices: list }) => element('li', { class: 'jw-notice' }, element('p', {}, words), element('ul', { class: 'jw-jumps' }, ...list.map(jump))))),
  ];
}
