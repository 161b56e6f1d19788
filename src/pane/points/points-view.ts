import { CellError } from '../../functions/kernel/cell';
import type { CurveKind } from '../../functions/kernel/range-kinds';
import { isBlankCell } from '../../functions/kernel/scalar';
import { addressOf, boxText } from '../../sheet/xlsx/address';
import { chartFigure } from '../charts/chart-figure';
import { button, choice, field, markWrong, textInput } from '../controls';
import { element, formulaCode } from '../dom';
import type { PaneHost, Selection } from '../host';
import { placeNamed, placeOf, placeText } from '../places';
import type { Frame, View } from '../view';
import { type Block, type Typed, blockOf, provenanceOf, usesOf } from './block';
import { pointsPlot } from './points-plot';
import { type ReadPoints, isComplete, readPoints } from './read-points';
import { SEPARATOR_WORDS } from './split-cells';

const KINDS: readonly (readonly [CurveKind, string])[] = [
  ['time', 'time-current: A and s'],
  ['cut-off', 'cut-off: kA and kA peak'],
  ['joule', 'joule integral: kA and A²s'],
];

/** Paste a maker's points, see what is wrong with them, write them to the sheet with where they come from. */
function mount(container: HTMLElement, host: PaneHost, frame: Frame): () => void {
  let selection: Selection = { kind: 'nothing' };
  const paste = element('textarea', { class: 'jw-input jw-paste' });
  Object.assign(paste, { rows: 6, spellcheck: false, placeholder: 'I (A)\tt (s)\n…\t…' });
  const kind = choice(KINDS, 'time');
  const inputs = {
    device: textInput('', { placeholder: 'may stay blank' }),
    source: textInput('', { placeholder: 'document, page', required: true }),
    issued: textInput('', { placeholder: 'as on the document', required: true }),
    volts: textInput('', { placeholder: 'V', required: true }),
  };
  const at = textInput('', { placeholder: 'Sheet!A1', required: true });
  const chart = chartFigure();
  const told = element('div', { class: 'jw-told' });
  const answer = element('div', { class: 'jw-answer', role: 'alert' });
  let read: ReadPoints = readPoints('', 'time');

  const look = (): void => {
    read = readPoints(paste.value, kind.value as CurveKind);
    told.replaceChildren(...toldOf(read));
    chart.show(pointsPlot(read, inputs.device.value.trim()));
    write.disabled = !isComplete(read);
    answer.replaceChildren();
  };
  const say = (className: string, ...words: readonly string[]): void => {
    answer.replaceChildren(...words.map((line) => element('p', { class: className }, line)));
  };
  const typed = (): Typed => ({ device: inputs.device.value, source: inputs.source.value, issued: inputs.issued.value, volts: inputs.volts.value });

  const writeIt = async (): Promise<void> => {
    const facts = provenanceOf(typed());
    const missing = 'source' in facts ? [] : facts;
    for (const [name, input] of Object.entries(inputs)) markWrong(input, missing.some(({ of }) => of === name));
    const here = selection.kind === 'cell' ? selection.sheet : '';
    const place = await placeNamed(at.value, host, here);
    markWrong(at, place === undefined);
    const words = [...missing.map((each) => each.words), ...(place ? [] : ['First cell is missing: a cell of a sheet of this workbook, such as Points!A1.'])];
    if (!place || !('source' in facts)) {
      say('jw-reason', ...words);
      (missing.length > 0 ? inputs[missing[0]!.of] : at).focus();
      return;
    }
    await put(blockOf(place, read, facts));
  };

  const put = async (block: Block): Promise<void> => {
    const { sheet, box } = block.whole;
    const before = await host.read(sheet, boxText(box));
    const taken = before.flatMap((row, r) => row.flatMap((cell, c) => (isBlankCell(cell) ? [] : [addressOf(box.top + r, box.left + c)])));
    if (taken.length > 0) return say('jw-reason', `${placeText(block.whole)} is not free: ${taken[0]} holds something. Choose a first cell with ${box.bottom - box.top + 1} free rows and two free columns.`);
    const done = await host.write(block.edits);
    if (!done.done) return say('jw-reason', done.words);
    const check = await host.read(sheet, addressOf(block.points.box.top - 1, box.left + 1));
    const found = check[0]?.[0];
    answer.replaceChildren(
      element('p', { class: 'jw-good' }, `Written to ${placeText(block.whole)}; the points are ${placeText(block.points)}.`),
      typeof found === 'string' && found !== '' ? element('p', { class: 'jw-note' }, `CURVE_CHECK in the sheet says: ${found}`) : '',
      found instanceof CellError ? element('p', { class: 'jw-note' }, `CURVE_CHECK in the sheet shows ${found.code} still: recalculate.`) : '',
      ...usesOf(read.kind, placeText(block.points)).map((use) => formulaCode('jw-formula', use)),
    );
    await host.select(sheet, boxText(block.points.box));
  };

  const troubled = (thrown: unknown): void => say('jw-reason', thrown instanceof RangeError ? `${thrown.message}.` : 'The sheet could not be read or written just now. Finish what is being typed in a cell, then try again.');
  const write = button('Write to the sheet', () => void writeIt().catch(troubled), 'jw-button jw-main');
  const take = button('Selected cell', () => {
    const place = placeOf(selection);
    if (place) at.value = placeText({ sheet: place.sheet, box: { ...place.box, bottom: place.box.top, right: place.box.left } });
    frame.say(place ? `First cell ${at.value}` : 'No cell is selected.');
  });
  paste.addEventListener('input', look);
  kind.addEventListener('change', look);
  inputs.device.addEventListener('input', look);

  container.replaceChildren(element('div', { class: 'jw-form' },
    field('Points', paste, { hint: 'Two columns from the maker’s document: tabs, commas, semicolons or spaces between; headings with units are converted.' }),
    field('Kind', kind),
    told, chart.element,
    element('div', { class: 'jw-pair' }, field('Device', inputs.device), field('Voltage, V', inputs.volts)),
    element('div', { class: 'jw-pair' }, field('Source', inputs.source), field('Issue date', inputs.issued)),
    field('First cell', at, { beside: take }),
    write, answer));
  look();

  let stop: (() => void) | undefined;
  const end = (): void => {
    stop?.();
    stop = undefined;
  };
  frame.onShow(() => {
    stop ??= host.watch((now) => (selection = now));
    chart.show(pointsPlot(read, inputs.device.value.trim()));
  });
  frame.onHide(end);
  return () => {
    end();
    chart.end();
  };
}

/** What was made of the paste, and what is wrong with it. */
function toldOf(read: ReadPoints): HTMLElement[] {
  if (read.rows.length === 0) return [];
  const count = read.rows.filter(({ point }) => point !== undefined).length;
  const headings = read.headings ? `; headings ${read.headings.join(' and ')}` : '; no headings';
  const findings = read.findings.map(({ words }) => element('li', {}, words));
  return [
    element('p', { class: 'jw-note' }, `${count} of ${read.rows.length} rows are points; ${SEPARATOR_WORDS[read.separator]} between the cells${headings}. ${read.converted.map((words) => `${words[0]!.toUpperCase()}${words.slice(1)}.`).join(' ')}`),
    ...read.faults.map((words) => element('p', { class: 'jw-reason' }, words)),
    findings.length === 0 ? element('p', { class: 'jw-good', role: 'status' }, 'no findings') : element('ul', { class: 'jw-findings', label: 'Findings by row' }, ...findings),
  ];
}

export const pointsView: View = { id: 'points', title: 'Points', mount };
