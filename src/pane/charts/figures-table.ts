import { rounded } from '../../core/figure';
import { element } from '../dom';
import { type Plot, type PlotMark, type PlotPoint } from './plot';

/** The figures of a chart as tables, for who does not see it and for who wants to know. */
export function figuresTable(plot: Plot): HTMLElement {
  const details = element('details', { class: 'jw-figures-of-chart' }, element('summary', {}, 'Figures'));
  details.addEventListener('toggle', () => {
    if (details.open && details.childElementCount === 1) details.append(...plot.marks.map((mark) => markTable(plot, mark)));
  });
  return details;
}

function markTable({ x, y }: Plot, mark: PlotMark): HTMLElement {
  if ('value' in mark) return element('p', { class: 'jw-note' }, `${mark.name}: ${rounded(mark.value)} on ${mark.kind === 'at x' ? x.title : y.title}`);
  const edges: readonly (readonly [string, readonly PlotPoint[]])[] = mark.kind === 'band' ? [[`${mark.name}, fast`, mark.fast], [`${mark.name}, slow`, mark.slow]] : [[mark.name, mark.points]];
  const row = (tag: 'th' | 'td', cells: readonly string[]): HTMLElement => element('tr', {}, ...cells.map((cell) => element(tag, tag === 'th' ? { scope: 'col' } : {}, cell)));
  return element('div', {}, ...edges.map(([name, points]) => element('table', { class: 'jw-working' },
    element('caption', {}, name),
    element('thead', {}, row('th', [x.title, y.title])),
    element('tbody', {}, ...points.map(([px, py]) => row('td', [x.places?.[px] ?? rounded(px, 5), rounded(py, 5)]))))));
}
