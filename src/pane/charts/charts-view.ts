import { addressOf } from '../../sheet/xlsx/address';
import { button, choice, field, markWrong, textInput } from '../controls';
import { element } from '../dom';
import type { PaneHost, Selection } from '../host';
import { placeNamed, placeOf, placeText } from '../places';
import type { Frame, View } from '../view';
import { chartActions } from './chart-actions';
import { chartFigure } from './chart-figure';
import { figuresTable } from './figures-table';
import { CHARTS, type ChartKind, PARTS, type PartKind } from './kinds';
import { DRAWABLE } from './marks-from-call';
import type { Money } from './marks-from-cells';
import { type Part, callsDrawn, cellPart, plotOf, rangePart } from './parts';
import type { Plot } from './plot';
import { FILE_SIZE, sceneOf } from './scene';
import { ChartTrouble } from './trouble';

const kinds = Object.entries(CHARTS).map(([kind, { words }]) => [kind as ChartKind, words] as const);
const figureOf = (input: HTMLInputElement): number => (/^\s*[+-]?[\d.]+\s*$/.test(input.value) ? Number(input.value) : NaN);

/** Draws what the reader points at in the sheet; the parts are read anew whenever the sheet changes. */
function mount(container: HTMLElement, host: PaneHost, frame: Frame): () => void {
  let selection: Selection = { kind: 'nothing' };
  let parts: Part[] = [];
  let plot: Plot | undefined;
  let turn = 0;
  const kind = choice(kinds, 'time');
  const part = element('select', { class: 'jw-input' });
  const [range, name, tolerance, rate, years] = [textInput('', { placeholder: 'Sheet!A1:B9' }), textInput('', { placeholder: 'name on the chart' }), textInput('10'), textInput('7'), textInput('15')];
  const chart = chartFigure();
  const list = element('ul', { class: 'jw-parts', label: 'On the chart' });
  const told = element('div', { class: 'jw-told', role: 'alert' });
  const below = element('div', {});
  const actions = chartActions(host, () => ({ plot, from: parts.map(({ from }) => from) }));
  const kindNow = (): ChartKind => kind.value as ChartKind;
  const money = (): Money => ({ ratePct: figureOf(rate), years: figureOf(years) });
  const tell = (words: readonly string[]): void => told.replaceChildren(...words.map((line) => element('p', { class: 'jw-reason' }, line)));

  const draw = async (): Promise<void> => {
    turn += 1;
    const mine = turn;
    const drawn = await plotOf(kindNow(), parts, host, money());
    if (mine !== turn) return;
    const scene = sceneOf(drawn.plot, FILE_SIZE);
    plot = scene && drawn.plot;
    chart.show(plot);
    tell(drawn.troubles);
    below.replaceChildren(...(plot ? [figuresTable(plot)] : parts.length > 0 && drawn.troubles.length === 0 ? [element('p', { class: 'jw-note' }, 'Nothing to draw yet: one mark alone spans no axes. Add a curve.')] : []));
    actions.element.hidden = plot === undefined;
  };
  const changed = (): void => {
    list.replaceChildren(...parts.map((each) => element('li', {},
      element('span', {}, each.words, element('span', { class: 'jw-hint' }, ` ${each.from}`)),
      button('Remove', () => {
        parts = parts.filter((other) => other !== each);
        changed();
        frame.say(`${each.words} removed`);
      }))));
    actions.clear();
    void draw();
  };
  const offer = (): void => {
    part.replaceChildren(...CHARTS[kindNow()].parts.map((each) => {
      const option = element('option', {}, PARTS[each].words);
      option.value = each;
      return option;
    }));
    shape();
  };
  const shape = (): void => {
    const now = part.value as PartKind;
    toleranceField.hidden = !(kindNow() === 'time' && now === 'curve');
    moneyFields.hidden = kindNow() !== 'cost';
    takes.textContent = `Takes ${PARTS[now].takes}.`;
  };
  const start = (next: ChartKind): void => {
    kind.value = next;
    parts = [];
    offer();
  };

  const add = async (): Promise<void> => {
    const here = selection.kind === 'cell' ? selection.sheet : '';
    const place = await placeNamed(range.value, host, here);
    markWrong(range, place === undefined);
    if (!place) {
      tell(['Range is missing: cells of a sheet of this workbook, such as Points!A5:B13, or a name.']);
      return range.focus();
    }
    const tolerancePct = figureOf(tolerance);
    const wrong = part.value === 'curve' && kindNow() === 'time' && !(tolerancePct >= 0 && tolerancePct <= 50);
    markWrong(tolerance, wrong);
    if (wrong) return tell([`Tolerance: got ${tolerance.value}, takes 0 to 50 %.`]);
    parts = [...parts, rangePart(kindNow(), { part: part.value as PartKind, place, name: name.value.trim(), tolerancePct }, money)];
    name.value = '';
    changed();
    frame.say('Added to the chart');
  };
  const addCall = async (): Promise<void> => {
    if (selection.kind !== 'cell' || selection.formula === '') return tell(['Select a cell with a JW formula first.']);
    const drawn = await callsDrawn(selection, host);
    // What fits the chart in sight comes before what would start another.
    const first = drawn.find((each) => each.kind === kindNow()) ?? drawn[0];
    if (!first) return tell([`Nothing in the formula of ${selection.address} can be drawn. Calls that can: ${DRAWABLE.join(', ')}.`]);
    if (first.kind !== kindNow()) start(first.kind);
    const called = selection.formula.match(/JW\.\w+/gi) ?? [];
    parts = [...parts, cellPart(first.kind, selection, [...new Set(called)].slice(0, 2))];
    changed();
    frame.say(`${addressOf(selection.row, selection.column)} added to the chart`);
  };
  const guarded = (work: () => Promise<void>): void => void work().catch((thrown: unknown) =>
    tell([thrown instanceof ChartTrouble ? thrown.message : 'The sheet could not be read just now. Finish what is being typed in a cell, then try again.']));

  const toleranceField = field('Tolerance in current, %', tolerance, { hint: '0 where the points are already an edge' });
  const moneyFields = element('div', { class: 'jw-pair' }, field('Interest, % a year', rate), field('Years', years));
  const takes = element('p', { class: 'jw-hint' });
  kind.addEventListener('change', () => {
    start(kindNow());
    changed();
  });
  part.addEventListener('change', shape);
  for (const input of [rate, years]) input.addEventListener('change', () => void draw());
  const takeRange = button('Selection', () => {
    const place = placeOf(selection);
    if (place) range.value = placeText(place);
    frame.say(place ? `Range ${range.value}` : 'No range is selected.');
  });

  container.replaceChildren(element('div', { class: 'jw-form' },
    field('Chart', kind),
    button('Draw the selected cell’s formula', () => guarded(addCall), 'jw-button jw-main'),
    element('fieldset', { class: 'jw-group' }, element('legend', {}, 'Or add from a range'),
      element('div', { class: 'jw-pair jw-wide' }, field('What', part), field('Name', name)),
      field('Range', range, { beside: takeRange }), takes, toleranceField, moneyFields, button('Add', () => guarded(add))),
    list, told, chart.element, below, actions.element));
  offer();
  actions.element.hidden = true;

  let stop: (() => void) | undefined;
  const end = (): void => {
    turn += 1;
    stop?.();
    stop = undefined;
  };
  frame.onShow(() => {
    stop ??= host.watch((now) => {
      selection = now;
      if (parts.length > 0) void draw();
    });
  });
  frame.onHide(end);
  return () => {
    end();
    chart.end();
  };
}

export const chartsView: View = { id: 'charts', title: 'Charts', mount };
