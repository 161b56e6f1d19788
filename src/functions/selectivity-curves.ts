import { figure, rounded } from '../core/figure';
import { type CurvePairComparison, type CurveRange, RANGES, compareCurves } from '../core/selectivity/ranges';
import { takeoverCurrent } from '../core/selectivity/takeover';
import type { Working } from '../core/working';
import { type ArgumentsOf, type Caution, member, worksheetFunction, worksheetFunctions } from './kernel/declaration';
import { flag, word } from './kernel/kinds';
import { points } from './kernel/range-kinds';
import { fractionTyped } from './plausible';
import { curveTolerance, edge, faultLevel, meanCurve } from './shared-parameters';

/** Two whole curves against each other; part of the family selectivity. */

/** Two invented curves for the examples. */
const MINOR = '{900,10;1100,5;1600,1;2400,0.2;3600,0.04;5500,0.01}';
const MAJOR = '{"A","s";2400,12;2900,5;4200,1;6400,0.2;9600,0.04;14500,0.01}';

const pairOfCurves = () => ({
  minor_points: points('time', 'mean time-current curve of the device nearer the fault', {}),
  minor_tolerance_pct: curveTolerance('minor_points'),
  major_points: points('time', 'mean time-current curve of the device upstream', {}),
  major_tolerance_pct: curveTolerance('major_points'),
  fault_kA: faultLevel('fault level at the device nearer the fault'),
});
type PairOfCurves = ArgumentsOf<ReturnType<typeof pairOfCurves>>;

const compared = (args: PairOfCurves, work?: Working): CurvePairComparison =>
  compareCurves(args.minor_points, args.minor_tolerance_pct, args.major_points, args.major_tolerance_pct, args.fault_kA, work);

/** Where selectivity is lost, range by range; and where bounds stand for a curve that does not reach so far. */
function comparisonCautions(args: PairOfCurves, asked: readonly CurveRange[]): Caution[] {
  const { ranges, end, majorStart } = compared(args);
  const concerned = ranges.filter(({ range }) => asked.includes(range));
  const openEnded = end < args.fault_kA * 1000 && concerned.some(({ span }) => span === undefined || span.to === end);
  return [
    ...concerned.map(({ range, lostAt }) => lostAt !== undefined && `${range}: selectivity lost from ${rounded(lostAt, 6)} A`),
    concerned.some(({ lostAt }) => lostAt !== undefined && lostAt < majorStart) && `below ${rounded(majorStart, 6)} A, where major_points begin, their first time stands as a bound`,
    fractionTyped('minor_tolerance_pct', args.minor_tolerance_pct),
    fractionTyped('major_tolerance_pct', args.major_tolerance_pct),
    openEnded && `compared up to ${rounded(end, 6)} A, the end of major_points; the fault is ${figure(args.fault_kA)} kA`,
  ];
}

export const selectRanges = worksheetFunctions({
  summary: 'Compares two curves in the overload, short-time and instantaneous ranges, each with its own verdict.',
  tasks: ['discrimination of two curves', 'do the curves cross', 'grading, coordination'],
  formula: 'least t major fast/t minor slow ≥ 1',
  basis: [{ source: 'IEC 60947-2:2016', clause: 'annex A', fromMemory: true }],
  caution: 'Curves end where energy begins: below 0.1 s use SELECT_JOULE_TEST, SELECT_PEAK_TEST or the tested table.',
  examples: [`=JW.SELECT_RANGES(${MINOR},10,${MAJOR},10,12)`, `=JW.SELECT_RANGES_AT(${MINOR},10,${MAJOR},10,12,"short-time")`],
  members: [
    member({
      name: 'SELECT_RANGES',
      parameters: { ...pairOfCurves(), headers: flag('with a row of headings', { default: true }) },
      result: 'table',
      spill: true,
      compute: (args, work) => ({
        headings: ['range', 'from A', 'to A', 'least time ratio', 'verdict'],
        rows: compared(args, work).ranges.map(({ range, span, judgement }) => [range, span?.from ?? '', span?.to ?? '', span?.leastRatio ?? '', judgement.verdict]),
      }),
      cautions: (args) => comparisonCautions(args, RANGES),
    }),
    member({
      name: 'SELECT_RANGES_AT',
      summary: 'Compares two curves in one range and gives its verdict.',
      parameters: { ...pairOfCurves(), range: word('which range', { overload: [], 'short-time': ['short time'], instantaneous: ['short-circuit'] }, {}) },
      result: 'verdict',
      compute: (args, work) => compared(args, work).ranges.find(({ range }) => range === args.range)!.judgement,
      cautions: (args) => comparisonCautions(args, [args.range]),
    }),
  ],
});

export const takeover = worksheetFunction({
  name: 'TAKEOVER_CURRENT',
  summary: 'Current above which the fuse clears before the breaker.',
  tasks: ['take-over current', 'where does the fuse take over from the breaker', 'crossing point'],
  formula: 'greatest current with t fuse = t breaker',
  parameters: {
    fuse_points: points('time', 'mean time-current curve of the fuse', {}),
    breaker_points: points('time', 'time-current curve of the breaker, taken as typed', {}),
    tolerance_pct: curveTolerance('fuse_points'),
    edge: edge(),
  },
  result: 'kA',
  basis: [{ source: 'IEC 60947-2:2016', clause: 'annex A, take-over current', fromMemory: true }],
  caution: 'slow edge for back-up, fast edge for selectivity.',
  examples: [
    '=JW.TAKEOVER_CURRENT({2000,20;4000,1;8000,0.05;16000,0.004},{1500,30;5000,6;5000,0.03;30000,0.02},10,"slow")',
    '=JW.TAKEOVER_CURRENT({2000,20;4000,1;8000,0.05;16000,0.004},{1500,30;5000,6;5000,0.03;30000,0.02},10,"fast")',
  ],
  compute: (args, work) => takeoverCurrent(args.fuse_points, args.breaker_points, args.tolerance_pct, args.edge, work),
  cautions: (args) => [meanCurve(args), fractionTyped('tolerance_pct', args.tolerance_pct)],
});
