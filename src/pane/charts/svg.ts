import { paperColour } from './inks';
import type { Scene, Shape } from './shapes';

const SVG = 'http://www.w3.org/2000/svg';
const FACE = 'Segoe UI, Helvetica Neue, Helvetica, Arial, sans-serif';

type Facts = Readonly<Record<string, string | number | undefined>>;

/** Attributes of a shape apart from its colours. */
function factsOf(shape: Shape): Facts {
  if (shape.kind === 'text') {
    const { x, y, size, anchor, bold } = shape;
    return { x, y, 'font-size': size, 'text-anchor': anchor, 'font-weight': bold ? 600 : undefined };
  }
  const { path, width, dash, opacity } = shape;
  return { d: path, 'stroke-width': width, 'stroke-dasharray': dash && dash.length > 0 ? dash.join(' ') : undefined, 'stroke-linejoin': 'round', 'fill-opacity': opacity };
}

const given = (facts: Facts): [string, string][] => Object.entries(facts).flatMap(([name, value]) => (value === undefined ? [] : [[name, String(value)]]));

/** The scene as an element of the page; its colours come from the page's looks. */
export function svgElement({ width, height, shapes }: Scene, label: string): SVGSVGElement {
  const make = (tag: string, facts: Facts): SVGElement => {
    const made = document.createElementNS(SVG, tag);
    for (const [name, value] of given(facts)) made.setAttribute(name, value);
    return made;
  };
  const root = make('svg', { class: 'jw-plot', role: 'img', 'aria-label': label, viewBox: `0 0 ${width} ${height}`, width, height }) as SVGSVGElement;
  root.append(...shapes.map((shape) => {
    if (shape.kind === 'text') {
      const text = make('text', { ...factsOf(shape), class: `jw-ink-${shape.ink}`, fill: 'currentColor' });
      text.textContent = shape.text;
      return text;
    }
    const { stroke, fill } = shape;
    return make('path', { ...factsOf(shape), class: `jw-ink-${stroke ?? fill ?? 'ink'}`, stroke: stroke === undefined ? 'none' : 'currentColor', fill: fill === undefined ? 'none' : 'currentColor' });
  }));
  return root;
}

const escaped = (text: string): string => text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;').replace(/"/g, '&quot;');
const attributes = (facts: Facts): string => given(facts).map(([name, value]) => ` ${name}="${escaped(value)}"`).join('');

/** The scene as a file of its own, for a light ground. */
export function svgFile({ width, height, shapes }: Scene, title: string): string {
  const body = shapes.map((shape) => {
    if (shape.kind === 'text') return `<text${attributes({ ...factsOf(shape), fill: paperColour(shape.ink) })}>${escaped(shape.text)}</text>`;
    const { stroke, fill } = shape;
    return `<path${attributes({ ...factsOf(shape), stroke: stroke === undefined ? 'none' : paperColour(stroke), fill: fill === undefined ? 'none' : paperColour(fill) })}/>`;
  });
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="${SVG}" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}" font-family="${FACE}" role="img">`,
    `<title>${escaped(title)}</title>`,
    `<rect width="${width}" height="${height}" fill="${paperColour('ground')}"/>`,
    ...body,
    '</svg>',
    '',
  ].join('\n');
}
