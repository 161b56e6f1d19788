import { DOMParser } from '@xmldom/xmldom';
import { dashOf, paperColour, seriesColour, seriesInk } from '../../src/pane/charts/inks';
import type { Plot } from '../../src/pane/charts/plot';
import { axisFigure, scaleOf } from '../../src/pane/charts/scale';
import { FILE_SIZE, paneSize, sceneOf } from '../../src/pane/charts/scene';
import { svgFile } from '../../src/pane/charts/svg';

const log = (title: string) => ({ title, logarithmic: true });
const plot = (over: Partial<Plot> = {}): Plot => ({
  title: 'Time-current', x: log('current, A'), y: log('time, s'),
  marks: [
    { kind: 'band', name: 'F1 <& "site"', fast: [[90, 100], [900, 0.01]], slow: [[110, 100], [1100, 0.01]] },
    { kind: 'at x', name: 'level', value: 20000 },
    { kind: 'line', name: 'cable', points: [[1000, 5], [7071, 0.1]] },
  ],
  ...over,
});

test('a logarithmic axis covers what is drawn, ends on 1, 2 or 5, labels decades and gives equal room to each', () => {
  const scale = scaleOf(log('A'), [90, 20000], [0, 400], 12);
  expect(scale.domain).toEqual([50, 20000]);
  expect(scale.at(50)).toBeCloseTo(0);
  expect(scale.at(20000)).toBeCloseTo(400);
  expect(scale.at(1000) - scale.at(100)).toBeCloseTo(scale.at(10000) - scale.at(1000));
  expect(scale.ticks.filter(({ label }) => label !== '').map(({ label }) => label)).toEqual(['50', '100', '200', '500', '1000', '2000', '5000', '10000', '20000']);
  expect(scaleOf(log('A'), [90, 20000], [0, 100], 4).ticks.filter(({ label }) => label !== '').map(({ label }) => label)).toEqual(['100', '1000', '10000']);
});

test('one value alone still gets an axis; a linear axis starts at zero', () => {
  const scale = scaleOf(log('A'), [100, 100], [0, 100], 4);
  expect(scale.domain[0]).toBeLessThan(100);
  expect(scale.domain[1]).toBeGreaterThan(100);
  expect(scaleOf({ title: 'money', logarithmic: false }, [1200, 4100], [0, 100], 5).domain).toEqual([0, 5000]);
});

test.each([[0.01, '0.01'], [1000, '1000'], [20000, '20000'], [1e5, '10⁵'], [2e6, '2·10⁶'], [1e-4, '10⁻⁴'], [0, '0'], [0.30000000000000004, '0.3']])('%p on an axis is %s', (value, label) => {
  expect(axisFigure(value)).toBe(label);
});

test('colours stand out from white, and lines differ by dash as well', () => {
  const light = (hex: string): number => {
    const parts = [1, 3, 5].map((at) => parseInt(hex.slice(at, at + 2), 16) / 255).map((c) => (c <= 0.03928 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4));
    return 0.2126 * parts[0]! + 0.7152 * parts[1]! + 0.0722 * parts[2]!;
  };
  const places = [0, 1, 2, 3, 4, 5, 6, 7];
  for (const place of places) expect(1.05 / (light(paperColour(seriesInk(place))) + 0.05)).toBeGreaterThan(4.5);
  expect(new Set(places.map((place) => dashOf(place).join())).size).toBe(8);
  expect(new Set(places.map(seriesColour)).size).toBe(8);
});

test('a scene keeps every shape inside its sheet and draws each mark', () => {
  for (const size of [FILE_SIZE, paneSize(280), paneSize(440)]) {
    const scene = sceneOf(plot(), size)!;
    const numbers = scene.shapes.flatMap((shape) => (shape.kind === 'text' ? [[shape.x, shape.y]] : [...shape.path.matchAll(/(-?[\d.]+),(-?[\d.]+)(?=[A-Z]|$)/g)].map(([, x, y]) => [Number(x), Number(y)])));
    expect(numbers.length).toBeGreaterThan(40);
    for (const [x, y] of numbers) {
      expect(x).toBeGreaterThanOrEqual(0);
      expect(x).toBeLessThanOrEqual(scene.width);
      expect(y).toBeGreaterThanOrEqual(0);
      expect(y).toBeLessThanOrEqual(scene.height);
    }
    const drawn = (ink: string) => scene.shapes.filter((shape) => shape.kind === 'path' && shape.stroke === ink).length;
    // Band: two edges and its sample in the legend.
    expect([drawn('series-0'), drawn('series-1'), drawn('series-2')]).toEqual([3, 2, 2]);
    const texts = scene.shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []));
    for (const text of ['Time-current', 'current, A', 'time, s', 'level', 'cable']) expect(texts).toContain(text);
  }
});

test('points at or below zero have no place on a logarithmic axis; nothing to draw is no scene', () => {
  const scene = sceneOf(plot({ marks: [{ kind: 'line', name: 'l', points: [[0, 1], [10, 1], [100, 0.1], [1000, -1]] }] }), FILE_SIZE)!;
  expect(JSON.stringify(scene)).not.toMatch(/NaN|Infinity|null/);
  expect(sceneOf(plot({ marks: [] }), FILE_SIZE)).toBeUndefined();
  expect(sceneOf(plot({ marks: [{ kind: 'at x', name: 'level', value: 5 }] }), FILE_SIZE)).toBeUndefined();
});

test('places along an axis are named', () => {
  const scene = sceneOf({ title: 'Path', x: { title: 'from the source', logarithmic: false, places: ['source', 'MSB', 'DB1'] }, y: { title: 'kA', logarithmic: false }, marks: [{ kind: 'line', name: 'Ik3', points: [[0, 35], [1, 30], [2, 11]] }] }, FILE_SIZE)!;
  const texts = scene.shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []));
  expect(texts).toEqual(expect.arrayContaining(['source', 'MSB', 'DB1']));
});

test('the SVG file is well formed, escapes names, and holds paths in colours and dashes, no scripts or styles', () => {
  const svg = svgFile(sceneOf(plot(), FILE_SIZE)!, 'Time-current');
  const faults: string[] = [];
  const document = new DOMParser({ onError: (_level, message) => faults.push(message) }).parseFromString(svg, 'image/svg+xml');
  expect(faults).toEqual([]);
  expect(document.documentElement!.getAttribute('viewBox')).toMatch(/^0 0 960 \d+$/);
  const paths = Array.from(document.getElementsByTagName('path'));
  expect(paths.filter((path) => path.getAttribute('stroke') === '#0b5c8a').length).toBe(3);
  expect(paths.some((path) => path.getAttribute('stroke-dasharray') === '7 3')).toBe(true);
  expect(Array.from(document.getElementsByTagName('text')).map((text) => text.textContent)).toContain('F1 <& "site"');
  expect(svg).not.toMatch(/<script|<style|style=|currentColor|NaN|undefined/);
});
