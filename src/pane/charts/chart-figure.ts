import { element } from '../dom';
import { type Plot, pointsOf } from './plot';
import { axisFigure } from './scale';
import { paneSize, sceneOf } from './scene';
import { svgElement } from './svg';

/** A chart in the pane: drawn to the room there is, redrawn where that changes; its figures stand in words for who does not see it. */
export interface ChartFigure {
  readonly element: HTMLElement;
  show(plot: Plot | undefined): void;
  end(): void;
}

const NARROWEST = 240;
const WIDEST = 640;

export function chartFigure(): ChartFigure {
  const figure = element('figure', { class: 'jw-chart' });
  let shown: Plot | undefined;
  let drawnAt = 0;
  const draw = (width: number): void => {
    drawnAt = width;
    const scene = shown && width > 0 ? sceneOf(shown, paneSize(Math.min(WIDEST, Math.max(NARROWEST, width)))) : undefined;
    figure.replaceChildren(...(scene && shown ? [svgElement(scene, inWords(shown))] : []));
    figure.hidden = scene === undefined;
  };
  const room = (): number => Math.floor(figure.parentElement?.clientWidth ?? 0);
  const watching = new ResizeObserver(() => {
    if (shown && room() !== drawnAt) draw(room());
  });
  watching.observe(figure);
  return {
    element: figure,
    show: (plot) => {
      shown = plot;
      figure.hidden = false;
      draw(room());
    },
    end: () => watching.disconnect(),
  };
}

/** Title, axes and what each line covers. */
export function inWords(plot: Plot): string {
  const marks = plot.marks.map((mark) => {
    if (mark.kind === 'at x' || mark.kind === 'at y') return `${mark.name}: ${axisFigure(mark.value)}`;
    const points = pointsOf(mark);
    const [first, last] = [points[0], points.at(-1)];
    return first && last ? `${mark.name}: ${points.length} points` : `${mark.name}: no points`;
  });
  return `${plot.title}. Across: ${plot.x.title}. Up: ${plot.y.title}. ${marks.join('. ')}.`;
}
