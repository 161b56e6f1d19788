import { scaleLinear, scaleLog } from 'd3-scale';
import { figure } from '../../core/figure';
import type { PlotAxis } from './plot';

/** From values to places along an axis, with the lines and labels that belong to it. */
export interface Scale {
  /** Ends of the axis in values. */
  readonly domain: readonly [number, number];
  at(value: number): number;
  readonly ticks: readonly Tick[];
}
export interface Tick {
  readonly value: number;
  /** Empty on minor lines. */
  readonly label: string;
}

const ROUND_STEPS = [1, 2, 5, 10] as const;

const decadeOf = (value: number): number => 10 ** Math.floor(Math.log10(value) + 1e-9);
const roundDown = (value: number): number => decadeOf(value) * ROUND_STEPS.filter((step) => step <= (value / decadeOf(value)) * (1 + 1e-9)).at(-1)!;
const roundUp = (value: number): number => decadeOf(value) * ROUND_STEPS.find((step) => step >= (value / decadeOf(value)) * (1 - 1e-9))!;

const SUPERSCRIPTS = '⁰¹²³⁴⁵⁶⁷⁸⁹';
/** A figure on an axis: in full up to five digits, then as a power of ten. */
export function axisFigure(value: number): string {
  const size = Math.abs(value);
  if (value === 0 || (size >= 1e-3 && size < 1e5)) return figure(Number(value.toPrecision(12)));
  const power = Math.floor(Math.log10(size) + 1e-9);
  const mantissa = figure(Number((value / 10 ** power).toPrecision(6)));
  const raised = `10${power < 0 ? '⁻' : ''}${[...String(Math.abs(power))].map((digit) => SUPERSCRIPTS[Number(digit)]).join('')}`;
  return mantissa === '1' ? raised : `${mantissa}·${raised}`;
}

function logScale([least, greatest]: readonly [number, number], range: readonly [number, number], room: number): Scale {
  let domain: [number, number] = [roundDown(least), roundUp(greatest)];
  if (!(domain[1] > domain[0] * 1.5)) domain = [domain[0] / 2, domain[1] * 2];
  const scale = scaleLog().domain(domain).range([...range]);
  const decades = Math.log10(domain[1] / domain[0]);
  const isDecade = (value: number): boolean => Math.abs(Math.log10(value) - Math.round(Math.log10(value))) < 1e-9;
  const first = (value: number): number => Math.round(value / decadeOf(value));
  // One or two decades say more with 2 and 5 labelled; many decades need a label only now and then.
  const every = Math.max(1, Math.ceil(decades / Math.max(1, room)));
  const labelled = (value: number): boolean => {
    if (isDecade(value)) return Math.round(Math.log10(value)) % every === 0;
    return decades * 3 <= room && [2, 5].includes(first(value));
  };
  const all = scale.ticks(Math.ceil(decades) * 9 + 1);
  return { domain, at: (value) => scale(value), ticks: all.map((value) => ({ value, label: labelled(value) ? axisFigure(value) : '' })) };
}

function linearScale([least, greatest]: readonly [number, number], range: readonly [number, number], room: number): Scale {
  // A quantity that never falls below zero is shown from zero.
  const from = least >= 0 ? 0 : least;
  const to = greatest > from ? greatest : from + 1;
  const scale = scaleLinear().domain([from, to]).nice(room).range([...range]);
  const [a, b] = scale.domain() as [number, number];
  return { domain: [a, b], at: (value) => scale(value), ticks: scale.ticks(room).map((value) => ({ value, label: axisFigure(value) })) };
}

function placesScale(places: readonly string[], range: readonly [number, number]): Scale {
  const domain: [number, number] = [-0.5, places.length - 0.5];
  const scale = scaleLinear().domain(domain).range([...range]);
  return { domain, at: (value) => scale(value), ticks: places.map((label, value) => ({ value, label })) };
}

/**
 * @param covered least and greatest value that must have a place
 * @param range   ends of the axis in pixels
 * @param room    labels that fit
 */
export function scaleOf({ logarithmic, places }: PlotAxis, covered: readonly [number, number], range: readonly [number, number], room: number): Scale {
  if (places) return placesScale(places, range);
  return logarithmic ? logScale(covered, range, room) : linearScale(covered, range, room);
}
