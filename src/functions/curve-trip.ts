import type { Edge } from '../core/curve/edge';
import { tripBand, tripEdge } from '../core/curve/trip-band';
import { type TripSettings, tripSettings } from '../core/curve/trip-settings';
import { firstStage, stagesAt, undercutTime } from '../core/curve/trip-stages';
import { tripTime } from '../core/curve/trip-time';
import { figure } from '../core/figure';
import { type Caution, member, worksheetFunctions } from './kernel/declaration';
import { flag, quantity, ratio, setting } from './kernel/kinds';
import { fractionTyped } from './plausible';
import { edge, instantaneousTolerance, meanCurve } from './shared-parameters';

/** Breakers from their settings; part of the family curve. */

const stages = () => ({
  ir_A: quantity('A', 'long-time setting', { upTo: 10000 }),
  tr_s: quantity('s', 'long-time delay at tr_multiple times ir_A', { upTo: 1000 }),
  isd_A: setting('A', 'short-time setting, or off', { upTo: 300000 }),
  tsd_s: quantity('s', 'longest short-time time; blank where the stage is off', { upTo: 10, defaultWords: 'none' }),
  ii_A: setting('A', 'instantaneous setting, or off', { upTo: 300000 }),
  ii_s: quantity('s', 'longest total breaking time of the instantaneous stage; blank where it is off', { upTo: 1, defaultWords: 'none' }),
});
const tripOptions = () => ({
  delayed_tol_pct: quantity('%', 'tolerance of the delayed releases in current', { sign: 'atLeast 0', upTo: 50, default: 20 }),
  ii_tol_pct: instantaneousTolerance(),
  i2t_until_A: setting('A', 'end of the I²t ramp of the short-time stage, or off', { upTo: 300000, defaultWords: 'off' }),
  tr_multiple: ratio('multiple of ir_A at which tr_s is stated', { above: 1, upTo: 20, default: 6 }),
});

/** The first of these currents at which the long-time law gives less than a delay that is set. */
function undercut(settings: TripSettings, currents: readonly number[], edgeAsked: Edge): string | undefined {
  const stagesThere = stagesAt(settings, edgeAsked);
  const time = currents.map((current) => undercutTime(stagesThere, current)).find((value) => value !== undefined);
  return time === undefined ? undefined : `the long-time I²t law gives less than the later stage reached, ${figure(time)} s: take that where the longest time counts`;
}

const toleranceCautions = (args: { delayed_tol_pct: number; ii_tol_pct: number }): Caution[] => [
  fractionTyped('delayed_tol_pct', args.delayed_tol_pct), fractionTyped('ii_tol_pct', args.ii_tol_pct),
];

/** tsd_s is the longest time of the setting; a release may be quicker, and selectivity asks for its least. */
function fastDelay(settings: TripSettings, { current_A, edge: edgeAsked }: { current_A: number; edge: Edge }): Caution {
  const { name, level } = firstStage(stagesAt(settings, edgeAsked), current_A);
  if (edgeAsked !== 'fast' || name !== 'short-time') return undefined;
  return `fast edge: tsd_s ${figure(level)} s stands as typed; for selectivity give the least time of the setting`;
}

export const trip = worksheetFunctions({
  summary: 'Tripping time of a breaker from its settings (one current), or its whole band as points for a chart.',
  tasks: ['breaker settings', 'LSI, Ir, Isd, Ii', 'electronic trip unit, thermal-magnetic', 'trip curve'],
  formula: 'least of tr·(m·Ir·d/I)², tsd from Isd·d, ti from Ii·e',
  basis: [
    { source: 'IEC 60947-2:2016', clause: '8.3.3.1', fromMemory: true },
    { source: 'common release practice', clause: 'I²t law, tr at 6·Ir' },
  ],
  caution: "ii_s and tsd_s are the maker's longest times for the setting; earth-fault stage: call it with Ig, tg as isd_A, tsd_s.",
  examples: [
    '=JW.TRIP_TIME(1500,320,8,1600,0.15,3800,0.04,"slow")', '=JW.TRIP_TIME(2500,320,8,1600,0.15,"off","","fast",10,20,3200)',
    '=JW.TRIP_BAND(20,320,8,1600,0.15,3800,0.04)',
  ],
  members: [
    member({
      name: 'TRIP_TIME',
      summary: 'Tripping time of a breaker from its settings at one current and one edge.',
      parameters: { current_A: quantity('A', 'current through the breaker', { upTo: 300000 }), ...stages(), edge: edge(), ...tripOptions() },
      result: 's',
      compute: (args, work) => tripTime(args.current_A, tripSettings(args), args.edge, work),
      cautions: (args) => {
        const settings = tripSettings(args);
        return [
          meanCurve({ edge: args.edge, tolerance_pct: Math.max(args.delayed_tol_pct, args.ii_tol_pct) }),
          undercut(settings, [args.current_A], args.edge),
          fastDelay(settings, args),
          ...toleranceCautions(args),
        ];
      },
    }),
    member({
      name: 'TRIP_BAND',
      summary: 'Whole band of a breaker from its settings: corners of the fast and of the slow edge, for a chart or as points with tolerance 0.',
      parameters: { upto_kA: quantity('kA', 'end of the band', { upTo: 300 }), ...stages(), ...tripOptions(), headers: flag('with a row of headings', { default: true }) },
      result: 'table',
      spill: true,
      compute: (args, work) => tripBand(tripSettings(args), args.upto_kA * 1000, work),
      cautions: (args) => {
        const settings = tripSettings(args);
        return [undercut(settings, tripEdge(settings, 'slow', args.upto_kA * 1000).x, 'slow'), ...toleranceCautions(args)];
      },
    }),
  ],
});
