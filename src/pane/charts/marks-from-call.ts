import { tripEdge } from '../../core/curve/trip-band';
import { type TripCells, tripSettings } from '../../core/curve/trip-settings';
import { figure, rounded } from '../../core/figure';
import { type TimedArc, arcEnergy } from '../../core/hazard/arc-energy';
import type { TwoOptions } from '../../core/life/break-even';
import { leastDistance } from '../../core/standards/arc-energy';
import type { Outcome } from '../../functions/kernel/call';
import type { Cell, Matrix } from '../../functions/kernel/cell';
import type { Points } from '../../functions/kernel/range-kinds';
import type { ChartKind } from './kinds';
import { costMarks, curveMark, levelMark, pairs, profileFromCells, withstandMark } from './marks-from-cells';
import type { PlotMark } from './plot';

/** What one call of ours draws. */
export interface DrawnCall {
  readonly kind: ChartKind;
  readonly marks: readonly PlotMark[];
  readonly places?: readonly string[];
}

type Args = Readonly<Record<string, unknown>>;
type Draw = (args: Args, value: Cell | Matrix, name: string) => DrawnCall | undefined;

const number = (args: Args, name: string): number => args[name] as number;

/** A current in A on the axis of a time-current chart. */
const currentMark = (amperes: number): PlotMark => ({ kind: 'at x', name: `${figure(amperes)} A`, value: amperes });

const timeCurve = (args: Args, name: string): PlotMark => curveMark('time', args['points'] as Points, number(args, 'tolerance_pct'), name);

const sheetCurve = (kind: 'cut-off' | 'joule'): Draw => (args, _value, name) =>
  ({ kind, marks: [{ kind: 'line', name, points: pairs(args['points'] as Points) }, levelMark(kind, number(args, 'fault_kA'), 'fault level')] });

/** A band is shown well past its settings. */
const PAST = 2;

const breaker: Draw = (args, _value, name) => {
  const settings = tripSettings(args as unknown as TripCells);
  const current = args['current_A'] as number | undefined;
  const highest = Math.max(settings.instantaneous?.ii ?? 0, settings.shortTime?.isd ?? 0, 6 * settings.ir, current ?? 0);
  const upTo = args['upto_kA'] === undefined ? PAST * highest : number(args, 'upto_kA') * 1000;
  const edge = (which: 'fast' | 'slow') => pairs(tripEdge(settings, which, upTo));
  return { kind: 'time', marks: [{ kind: 'band', name: `${name}, Ir ${figure(settings.ir)} A`, fast: edge('fast'), slow: edge('slow') }, ...(current === undefined ? [] : [currentMark(current)])] };
};

const level: Draw = (_args, value, name) => (typeof value === 'number' ? { kind: 'time', marks: [levelMark('time', value, name)] } : undefined);

/** Straight on logarithmic axes, so its ends are enough. */
const arc: Draw = (args, value) => {
  const timed: TimedArc = {
    fault: number(args, 'fault_kA'), gap: number(args, 'gap_mm'), electrodes: args['electrodes'] as TimedArc['electrodes'], volts: number(args, 'volts_V'),
    time: number(args, 'time_ms'), boxFactor: number(args, 'box_factor'), reduced: args['reduced'] as boolean,
  };
  const distance = args['distance_mm'] as number | undefined ?? (typeof value === 'number' ? value : leastDistance);
  const limit = args['limit_J_cm2'] as number | undefined;
  const ends = [leastDistance, PAST * Math.max(distance, 1000)];
  return {
    kind: 'arc',
    marks: [
      { kind: 'line', name: `${figure(timed.fault)} kA for ${rounded(timed.time)} ms${timed.reduced ? ', reduced arc' : ''}`, points: ends.map((each) => [each, arcEnergy(timed, each)]) },
      { kind: 'at x', name: `${figure(Math.round(distance))} mm`, value: distance },
      ...(limit === undefined ? [] : [{ kind: 'at y', name: `${figure(limit)} J/cm²`, value: limit } as const]),
    ],
  };
};

const breakEven: Draw = (args) => {
  const { fixedA, fixedB, faultA, faultB }: TwoOptions = { fixedA: number(args, 'fixed_a'), fixedB: number(args, 'fixed_b'), faultA: number(args, 'fault_cost_a'), faultB: number(args, 'fault_cost_b') };
  const money = { ratePct: number(args, 'rate_pct'), years: number(args, 'years') };
  return { kind: 'cost', marks: costMarks([{ name: 'A', fixed: fixedA, fault: faultA }, { name: 'B', fixed: fixedB, fault: faultB }], money) };
};

const DRAWS: Readonly<Record<string, Draw>> = {
  CURVE_TIME: (args, _value, name) => ({ kind: 'time', marks: [timeCurve(args, name), currentMark(number(args, 'current_A'))] }),
  CURVE_CURRENT: (args, _value, name) => ({ kind: 'time', marks: [timeCurve(args, name), { kind: 'at y', name: `${figure(number(args, 'time_s'))} s`, value: number(args, 'time_s') }] }),
  ARC_TIME_FUSE: (args, _value, name) => ({ kind: 'time', marks: [timeCurve(args, name), currentMark(1000 * number(args, 'arc_kA'))] }),
  TRIP_TIME: breaker,
  TRIP_BAND: breaker,
  CABLE_WITHSTAND: (_args, value) => (typeof value === 'number' ? { kind: 'time', marks: [withstandMark('time', value, 'cable')] } : undefined),
  ...Object.fromEntries(['3PH', '2PH', 'EARTH', 'LOOP'].flatMap((fault) => ['MAX', 'MIN'].map((end) => [`FAULT_${fault}_${end}`, level]))),
  CUTOFF_POINTS: sheetCurve('cut-off'),
  LETTHROUGH_POINTS: sheetCurve('joule'),
  LETTHROUGH_TEST: (args) => letThrough(args),
  LETTHROUGH_MARGIN: (args) => letThrough(args),
  NET_PROFILE: (_args, value) => (Array.isArray(value) ? { kind: 'profile', ...profileFromCells(value) } : undefined),
  BREAKEVEN_RATE: breakEven,
  BREAKEVEN_WORDS: breakEven,
  ARC_ENERGY: arc,
  ARC_BOUNDARY: arc,
};

function letThrough(args: Args): DrawnCall | undefined {
  const [joule, withstand, level_kA] = [args['let_A2s'], args['withstand_A2s'], args['let_kA']];
  if (typeof joule !== 'number' || typeof withstand !== 'number' || typeof level_kA !== 'number') return undefined;
  return {
    kind: 'joule',
    marks: [{ kind: 'points', name: `let-through ${rounded(joule)} A²s`, points: [[level_kA, joule]] }, withstandMark('joule', withstand, 'cable'), levelMark('joule', number(args, 'fault_kA'), 'fault level')],
  };
}

/** Names of functions whose calls can be drawn. */
export const DRAWABLE: readonly string[] = Object.keys(DRAWS);

/** What a call that was worked draws; undefined where it draws nothing. */
export function drawnCall({ entry, args, value, error }: Outcome, name: string): DrawnCall | undefined {
  const draw = Object.hasOwn(DRAWS, entry.member.name) ? DRAWS[entry.member.name] : undefined;
  return draw && args && !error ? draw(args, value, name) : undefined;
}
