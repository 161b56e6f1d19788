import { type ArcCase, arcCurrent } from '../core/hazard/arc-current';
import { type TimedArc, arcBoundary, arcEnergy } from '../core/hazard/arc-energy';
import { boxFactor, boxFactorRange } from '../core/hazard/box-factor';
import { busbarForce, busbarStress } from '../core/hazard/busbar';
import { cleatForce } from '../core/hazard/cleat-force';
import { fuseArcTime } from '../core/hazard/fuse-arc-time';
import { burnEnergy } from '../core/standards/arc-energy';
import { family, worksheetFunction } from './kernel/declaration';
import { count, flag, quantity, ratio, word } from './kernel/kinds';
import { points } from './kernel/range-kinds';
import { fractionTyped } from './plausible';
import { curveTolerance } from './shared-parameters';

const peak = () => quantity('kA', 'greatest peak of the fault current, or cut-off current of the device that limits it', { upTo: 700 });
const span = () => quantity('m', 'distance between the supports', { upTo: 10 });

const bolted = () => quantity('kA', 'bolted three-phase fault current', { atLeast: 0.5, upTo: 106 });
const gap = () => quantity('mm', 'gap between the electrodes', { atLeast: 6.35, upTo: 76.2 });
const electrodes = () => word('arrangement of the electrodes: vertical or horizontal, in a box (B at the end: on a barrier) or in open air', { VCB: [], VCBB: [], HCB: [], VOA: [], HOA: [] }, {});
const arcVolts = () => quantity('V', 'voltage between lines', { atLeast: 208, upTo: 600 });
const duration = () => quantity('ms', 'duration of the arc', { upTo: 10000 });
const correction = () => ratio('correction for the size of the enclosure, as ARC_BOX_FACTOR gives it', { atLeast: boxFactorRange.least, upTo: boxFactorRange.greatest, default: 1 });
const reduced = () => flag('the reduced arcing current', { default: false });
const dimension = (which: string) => quantity('mm', `${which} of the enclosure`, { upTo: 3000 });

const publicCopies = 'two public copies that agree';
const ARC_SCOPE =
  'Figure for the tested arrangements, three-phase, door state as modelled; nothing about blast, nothing about direct current, no clothing class. ' +
  'Work the reduced current with its own time. Over 2 s: say why.';

interface ArcArguments {
  readonly fault_kA: number;
  readonly gap_mm: number;
  readonly electrodes: ArcCase['electrodes'];
  readonly volts_V: number;
}
const arcOf = ({ fault_kA, gap_mm, electrodes, volts_V }: ArcArguments): ArcCase => ({ fault: fault_kA, gap: gap_mm, electrodes, volts: volts_V });

interface TimedArguments extends ArcArguments {
  readonly time_ms: number;
  readonly box_factor: number;
  readonly reduced: boolean;
}
const timed = (args: TimedArguments): TimedArc => ({ ...arcOf(args), time: args.time_ms, boxFactor: args.box_factor, reduced: args.reduced });

const arcCautions = ({ reduced, time_ms }: TimedArguments) => [
  !reduced && 'work the reduced current too, with its own clearing time',
  time_ms > 2000 && 'over 2 s: say why the person cannot move away sooner',
];

export const busbarForceFunction = worksheetFunction({
  name: 'BUSBAR_FORCE',
  summary: 'Force on the worst busbar span in a fault.',
  tasks: ['forces between busbars', 'electromagnetic force', 'mechanical strength in a fault'],
  formula: '2E-07·f·ip²·l/a',
  parameters: {
    peak_kA: peak(),
    span_m: span(),
    spacing_m: quantity('m', 'distance between the centre lines of neighbouring bars', { upTo: 2 }),
    conductors: count('bars in a plane: 3 of a three-phase system (the centre bar is worst), or 2', { listed: [2, 3], default: 3 }),
  },
  result: 'N',
  basis: [{ source: 'IEC 60865-1:2011', clause: '5.2', fromMemory: true }],
  caution: 'Span under 4 spacings: reads high. Peak, not r.m.s.',
  examples: ['=JW.BUSBAR_FORCE(105,0.5,0.08)', '=JW.BUSBAR_FORCE(52.5,"400 mm",0.06,2)'],
  compute: ({ peak_kA, span_m, spacing_m, conductors }, work) => busbarForce(peak_kA, span_m, spacing_m, conductors, work),
  cautions: ({ span_m, spacing_m }) => [span_m < 4 * spacing_m && 'span under 4 spacings: long-conductor formula reads high'],
});

export const busbarStressFunction = worksheetFunction({
  name: 'BUSBAR_STRESS',
  summary: 'Bending stress in a busbar under the force of a fault.',
  tasks: ['bending stress', 'will the busbar bend', 'support spacing'],
  formula: 'Vσ·β·F·l/(8·W)',
  parameters: {
    force_N: quantity('N', 'force on the span', { upTo: 1e6 }),
    span_m: span(),
    modulus_mm3: quantity('mm³', 'section modulus about the axis of bending', { upTo: 1e7 }),
    beta: ratio('factor of the supports: 1 both ends free to turn, 0.73 one of them or a continuous bar, 0.5 both held', { atLeast: 0.5, upTo: 1, default: 1 }),
    v_sigma: ratio('ratio of dynamic to static stress', { atLeast: 0.1, upTo: 2, default: 1 }),
  },
  result: 'N/mm²',
  basis: [{ source: 'IEC 60865-1:2011', clause: '5.4 and table 3', fromMemory: true }],
  caution: 'Main conductors only: in bars of several parts add the stress between the parts. The allowed stress is the maker’s.',
  examples: ['=JW.BUSBAR_STRESS(797.6,1,1000,0.73)', '=JW.BUSBAR_STRESS(JW.BUSBAR_FORCE(105,0.5,0.08),0.5,"6000 mm³")'],
  compute: ({ force_N, span_m, modulus_mm3, beta, v_sigma }, work) => busbarStress(force_N, span_m, modulus_mm3, beta, v_sigma, work),
});

export const cleatForceFunction = worksheetFunction({
  name: 'CLEAT_FORCE',
  summary: 'Force a metre between cables in a fault.',
  tasks: ['cable cleats', 'cleat spacing', 'force between cables'],
  formula: 'f·ip²/S',
  parameters: {
    peak_kA: peak(),
    spacing_m: quantity('m', 'distance between centres; touching cables in trefoil: one diameter', { upTo: 1 }),
    formation: word('how the cables lie', { trefoil: [], flat: [], pair: ['two', 'single-phase'] }, {}),
  },
  result: 'N/m',
  basis: [{ source: 'IEC 61914:2021', clause: 'annex B', fromMemory: true }],
  caution: 'Peak, or cut-off if limited. The standard’s 0.17 is √3/2·0.2 cut to two digits, 1.9 % below it.',
  examples: ['=JW.CLEAT_FORCE(63,0.041,"trefoil")', '=JW.CLEAT_FORCE("38 kA",0.05,"pair")'],
  compute: ({ peak_kA, spacing_m, formation }, work) => cleatForce(peak_kA, spacing_m, formation, work),
});

export const arcCurrentFunction = worksheetFunction({
  name: 'ARC_CURRENT',
  summary: 'Arcing fault current, or its reduced case.',
  tasks: ['arc flash', 'arcing current', 'reduced arcing current'],
  formula: '1/√((0.6/V)²·(1/I600² − (0.36 − V²)/(0.36·I²))); reduced ·(1 − 0.5·VarCf)',
  parameters: { fault_kA: bolted(), gap_mm: gap(), electrodes: electrodes(), volts_V: arcVolts(), reduced: reduced() },
  result: 'kA',
  basis: [{ source: 'IEEE 1584-2018', clause: `4.4, 4.5 (${publicCopies})` }],
  caution: 'Find the clearing time at both currents.',
  examples: ['=JW.ARC_CURRENT(45,32,"VCB",480)', '=JW.ARC_CURRENT(28,25,"HCB",415,TRUE)'],
  compute: (args, work) => arcCurrent(arcOf(args), args.reduced, work),
});

export const arcBoxFactor = worksheetFunction({
  name: 'ARC_BOX_FACTOR',
  summary: 'Correction for the size of the enclosure.',
  tasks: ['arc flash enclosure', 'box size correction', 'panel dimensions'],
  formula: 'b1·EES² + b2·EES + b3, shallow 1/(…)',
  parameters: { width_mm: dimension('width'), height_mm: dimension('height'), depth_mm: dimension('depth'), gap_mm: gap(), electrodes: electrodes(), volts_V: arcVolts() },
  result: 'ratio',
  basis: [{ source: 'IEEE 1584-2018', clause: '4.8', fromMemory: true }],
  caution: 'Widths and heights over 1244.6 mm count as that, as the standard says. 1 in open air. A box so small that the factor leaves 0.3 to 3 is refused.',
  examples: ['=JW.ARC_BOX_FACTOR(610,610,254,32,"VCB",480)', '=JW.ARC_BOX_FACTOR(300,400,150,13,"HCB",415)'],
  compute: ({ width_mm, height_mm, depth_mm, gap_mm, electrodes, volts_V }, work) =>
    boxFactor({ width: width_mm, height: height_mm, depth: depth_mm }, gap_mm, electrodes, volts_V, work),
});

export const arcTimeFuse = worksheetFunction({
  name: 'ARC_TIME_FUSE',
  summary: 'Clearing time of a fuse at an arc current, for arc energy: slow edge, never below the floor.',
  tasks: ['arc flash with a fuse', 'clearing time at the arc current', 'how long does the arc last'],
  formula: 'curve at I/(1 + tolerance), at least the floor',
  parameters: {
    points: points('time', 'mean time-current curve of the fuse', {}),
    arc_kA: quantity('kA', 'arc current', { upTo: 106 }),
    tolerance_pct: curveTolerance(),
    floor_ms: quantity('ms', 'least time stated', { atLeast: 1, upTo: 100, default: 10 }),
  },
  result: 'ms',
  basis: [{ source: 'IEEE 1584-2018', clause: 'determination of arc durations', fromMemory: true }, { source: 'practice', clause: 'floor 10 ms' }],
  caution: 'A large fuse may be slow at arc current: use the reduced current too. Pre-arcing points: add arcing time.',
  examples: ['=JW.ARC_TIME_FUSE({900,10;1100,5;1600,1;2400,0.2;3600,0.04;5500,0.01},2.4,10)', '=JW.ARC_TIME_FUSE({900,10;1100,5;1600,1;2400,0.2;3600,0.04;5500,0.01},9.5,10)'],
  compute: ({ points, arc_kA, tolerance_pct, floor_ms }, work) => fuseArcTime(points, arc_kA, tolerance_pct, floor_ms, work),
  cautions: ({ tolerance_pct }) => [fractionTyped('tolerance_pct', tolerance_pct)],
});

export const arcEnergyFunction = worksheetFunction({
  name: 'ARC_ENERGY',
  summary: 'Arc energy at the working distance.',
  tasks: ['arc flash', 'incident energy', 'cal/cm², PPE'],
  formula: '(12.552/50)·T·10^(k1 + k2·lg G + k3·I600/(…) + k11·lg I + k12·lg D + k13·lg Iarc + lg(1/CF))',
  parameters: {
    fault_kA: bolted(), time_ms: duration(), gap_mm: gap(),
    distance_mm: quantity('mm', 'working distance: from the arc to face and chest', { atLeast: 305, upTo: 5000 }),
    electrodes: electrodes(), volts_V: arcVolts(), box_factor: correction(), reduced: reduced(),
  },
  result: 'J/cm²',
  basis: [{ source: 'IEEE 1584-2018', clause: `4.6 (${publicCopies})` }],
  caution: ARC_SCOPE,
  examples: ['=JW.ARC_ENERGY(45,61.3,32,609.6,"VCB",480,JW.ARC_BOX_FACTOR(610,610,254,32,"VCB",480))', '=JW.ARC_ENERGY(28,180,25,455,"VCBB",415,1,TRUE)'],
  compute: (args, work) => arcEnergy(timed(args), args.distance_mm, work),
  cautions: arcCautions,
});

export const arcBoundaryFunction = worksheetFunction({
  name: 'ARC_BOUNDARY',
  summary: 'Distance at which the arc energy falls to the limit.',
  tasks: ['arc flash boundary', 'safe distance', 'how far to stand'],
  formula: '10^((lg limit − lg E without D)/k12)',
  parameters: {
    fault_kA: bolted(), time_ms: duration(), gap_mm: gap(), electrodes: electrodes(), volts_V: arcVolts(), box_factor: correction(), reduced: reduced(),
    limit_J_cm2: quantity('J/cm²', 'energy at the boundary; 5.0208 J/cm² is 1.2 cal/cm²', { atLeast: 0.5, upTo: 200, default: burnEnergy }),
  },
  result: 'mm',
  basis: [{ source: 'IEEE 1584-2018', clause: '4.7', fromMemory: true }],
  caution: ARC_SCOPE,
  examples: ['=JW.ARC_BOUNDARY(45,61.3,32,"VCB",480,JW.ARC_BOX_FACTOR(610,610,254,32,"VCB",480))', '=JW.ARC_BOUNDARY(28,120,25,"VCBB",415)'],
  compute: (args, work) => arcBoundary(timed(args), args.limit_J_cm2, work),
  cautions: arcCautions,
});

export const hazard = family('hazard', [
  busbarForceFunction, busbarStressFunction, cleatForceFunction, arcCurrentFunction, arcBoxFactor, arcTimeFuse, arcEnergyFunction, arcBoundaryFunction,
]);
