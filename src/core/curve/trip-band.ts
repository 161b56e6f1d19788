import { figure } from '../figure';
import { atMost, nearly } from '../judgement';
import { outOfRange } from '../refusal';
import { type Working, silent } from '../working';
import type { Edge } from './edge';
import type { CurvePoints } from './interpolate';
import type { TripSettings } from './trip-settings';
import { type Stage, firstStage, stagesAt } from './trip-stages';
import { bandStart } from './trip-time';

/** A stretch of an edge that is one straight line on log-log: level, or falling with I². */
interface Stretch {
  from: number;
  to: number;
  stage: Stage;
  falling: boolean;
}

/**
 * Corners of one edge of a breaker's band, A and s; the straight lines between them on log-log are exact.
 * The fast edge ends where the instantaneous release may act, for there it has no least time.
 * @param upTo end of the band, A
 * @returns points, or none where the edge has no stretch below that current
 */
export function tripEdge(settings: TripSettings, edge: Edge, upTo: number): CurvePoints {
  const stages = stagesAt(settings, edge);
  const instantaneous = stages.find(({ name }) => name === 'instantaneous');
  const end = edge === 'fast' && instantaneous ? Math.min(upTo, instantaneous.from) : upTo;
  return corners(stretches(stages, bandStart(settings.ir, edge), end));
}

/** Currents at which the line in force can change: pick-ups, and where an I²t line meets a level; no finite one where there is no level. */
function breaks(stages: readonly Stage[]): number[] {
  const crossings = stages.flatMap(({ joule }) => stages.map(({ level }) => Math.sqrt(joule / level)));
  return [...stages.map(({ from }) => from), ...crossings];
}

function stretches(stages: readonly Stage[], start: number, end: number): Stretch[] {
  const inside = [start, ...breaks(stages), end].filter((current) => current >= start && current <= end).sort((a, b) => a - b);
  const marks = inside.filter((current, i) => !nearly(current, inside[i - 1] ?? 0));
  const found: Stretch[] = [];
  marks.slice(1).forEach((to, i) => {
    const from = marks[i]!;
    const middle = Math.sqrt(from * to);
    const stage = firstStage(stages, middle);
    const falling = stage.joule / middle ** 2 > stage.level;
    const last = found[found.length - 1];
    if (last && last.stage === stage && last.falling === falling) last.to = to;
    else found.push({ from, to, stage, falling });
  });
  return found;
}

function corners(lines: readonly Stretch[]): CurvePoints {
  const found: { current: number; time: number }[] = [];
  for (const { from, to, stage, falling } of lines) {
    for (const current of [from, to]) {
      const time = falling ? stage.joule / current ** 2 : stage.level;
      const last = found[found.length - 1];
      if (!last || !nearly(last.current, current) || !nearly(last.time, time)) found.push({ current, time });
      // The level is the exact figure of the two; with the other a level stretch might seem to rise.
      else if (!falling) last.time = time;
    }
  }
  return { x: found.map(({ current }) => current), y: found.map(({ time }) => time) };
}

/**
 * Both edges of a breaker's band, side by side. Each pair of columns serves as points of a curve with tolerance 0.
 * Source: IEC 60947-2:2016, 8.3.3.1 (from memory); I²t law: common release practice.
 * @param upTo end of the band, A
 */
export function tripBand(settings: TripSettings, upTo: number, work: Working = silent): { headings: string[]; rows: (number | '')[][] } {
  const start = bandStart(settings.ir, 'slow');
  if (atMost(upTo, start)) throw outOfRange('upto_kA', `${figure(upTo / 1000)} kA does not exceed 1.30 Ir, ${figure(start)} A`);
  const [fast, slow] = [tripEdge(settings, 'fast', upTo), tripEdge(settings, 'slow', upTo)];
  work.step('1.05·Ir, 1.30·Ir', 'the band begins', { Ir: [settings.ir, 'A'] }, `${figure(bandStart(settings.ir, 'fast'))} A fast, ${figure(start)} A slow`);
  const rows = Array.from({ length: Math.max(fast.x.length, slow.x.length) }, (_, i) => [fast.x[i] ?? '', fast.y[i] ?? '', slow.x[i] ?? '', slow.y[i] ?? ''] as (number | '')[]);
  return { headings: ['fast A', 'fast s', 'slow A', 'slow s'], rows };
}
