import { button } from '../controls';
import { element } from '../dom';
import type { PaneHost } from '../host';
import type { SheetPlan } from '../sheet-plan';
import type { Frame, View } from '../view';
import { type Needed, type Present, neededSheets } from './needed';
import { columnsOf, starterPlans, titleOf } from './starter';

const list = (plans: readonly SheetPlan[]): string => plans.map(({ name }) => name).join(', ');

/** Choose sheets of the starter; those that they read come along. */
function mount(container: HTMLElement, host: PaneHost, frame: Frame): () => void {
  let plans: readonly SheetPlan[] = [];
  let present: Present = { sheets: [], tables: [], names: [] };
  let boxes: readonly HTMLInputElement[] = [];
  const choices = element('fieldset', { class: 'jw-group' }, element('legend', {}, 'Sheets'));
  const told = element('div', { class: 'jw-told', role: 'status' });
  const answer = element('div', { class: 'jw-answer', role: 'alert' });
  const insert = button('Insert', () => void run().catch(troubled), 'jw-button jw-main');
  const whole = button('Choose the whole starter', () => {
    const all = boxes.every(({ checked }) => checked);
    for (const box of boxes) box.checked = !all;
    tell();
  });

  const needed = (): Needed => neededSheets(plans, boxes.filter(({ checked }) => checked).map(({ value }) => value), present);
  const tell = (): void => {
    const { chosen, alongside, troubles } = needed();
    whole.textContent = boxes.length > 0 && boxes.every(({ checked }) => checked) ? 'Choose none' : 'Choose the whole starter';
    insert.disabled = chosen.length === 0 || troubles.length > 0;
    insert.textContent = chosen.length === 0 ? 'Insert' : `Insert ${chosen.length + alongside.length} ${chosen.length + alongside.length === 1 ? 'sheet' : 'sheets'}`;
    told.replaceChildren(
      ...(alongside.length === 0 ? [] : [element('p', { class: 'jw-note' }, `Come along, for the chosen ones read them: ${list(alongside)}.`)]),
      ...troubles.map((words) => element('p', { class: 'jw-disagrees' }, words)));
  };

  const look = async (): Promise<void> => {
    if (plans.length === 0) {
      plans = await starterPlans();
      const made = plans.map((plan) => sheetChoice(plan, tell));
      boxes = made.map(({ box }) => box);
      choices.append(...made.map(({ row }) => row));
    }
    const [sheets, tables, names] = await Promise.all([host.sheets(), host.source.tables(), host.source.names()]);
    present = { sheets, tables: tables.map(({ name }) => name), names: names.map(({ name }) => name) };
    tell();
  };

  const run = async (): Promise<void> => {
    const { chosen, alongside } = needed();
    const all = plans.filter((plan) => chosen.includes(plan) || alongside.includes(plan));
    insert.disabled = true;
    const done = await host.insertSheets(all);
    if (done.done) for (const box of boxes) box.checked = false;
    await look();
    answer.replaceChildren(...(done.done
      ? [element('p', { class: 'jw-good' }, `Inserted: ${list(all)}. Italics are invented examples, to overwrite.`)]
      : [element('p', { class: 'jw-reason' }, done.words), ...(done.instead ? [button(done.instead.label, done.instead.act)] : [])]));
  };
  const troubled = (): void => {
    insert.disabled = false;
    answer.replaceChildren(element('p', { class: 'jw-reason' }, 'The workbook could not be read or changed just now. Finish what is being typed in a cell, then try again.'));
  };

  container.replaceChildren(element('div', { class: 'jw-form' },
    element('p', { class: 'jw-start' }, 'Adds new sheets with headings, units, formulas, lists to choose from, marks and print set-up. Nothing that is there is changed.'),
    whole, choices, told, insert, answer));
  insert.disabled = true;
  frame.onShow(() => void look().catch(troubled));
  return () => undefined;
}

/** One sheet: its name and purpose, a box to choose it, and its columns to unfold. */
function sheetChoice(plan: SheetPlan, changed: () => void): { row: HTMLElement; box: HTMLInputElement } {
  const box = element('input', {});
  Object.assign(box, { type: 'checkbox', value: plan.name });
  box.addEventListener('change', changed);
  const columns = columnsOf(plan);
  const row = element('div', { class: 'jw-sheet' },
    element('label', { class: 'jw-tick' }, box, element('span', {}, element('span', { class: 'jw-name' }, plan.name), ` ${titleOf(plan)}`)));
  if (columns.length > 0) {
    const details = element('details', {}, element('summary', {}, `${columns.length} columns`));
    details.addEventListener('toggle', () => {
      if (details.open && details.childElementCount === 1) details.append(element('ul', {}, ...columns.map(({ name, unit, worked }) =>
        element('li', { class: worked ? 'jw-worked' : 'jw-typed' }, name, element('span', { class: 'jw-hint' }, `${unit === '' || unit === '–' ? '' : ` ${unit}`}${worked ? '' : ', typed'}`)))));
    });
    row.append(details);
  }
  return { row, box };
}

export const sheetsView: View = { id: 'sheets', title: 'Sheets', mount };
