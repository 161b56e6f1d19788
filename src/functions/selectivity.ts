import { figure } from '../core/figure';
import { judgeBackup } from '../core/selectivity/backup';
import { judgeJoule, prearcingLimitOf } from '../core/selectivity/joule';
import { selectivityExtent, selectivityLimit } from '../core/selectivity/limit';
import { judgePeak } from '../core/selectivity/peak';
import { NOMINAL_STEP, judgeRatio, ratingRatio } from '../core/selectivity/ratio';
import { judgeTimeGap } from '../core/selectivity/time-gap';
import { fuseRatings } from '../core/standards/fuse-gates';
import { family, member, testAndMargin, worksheetFunction, worksheetFunctions } from './kernel/declaration';
import { quantity, ratio, setting, text } from './kernel/kinds';
import { fractionTyped, kilojoulesTyped } from './plausible';
import { selectRanges, takeover } from './selectivity-curves';
import { faultLevel, instantaneousTolerance } from './shared-parameters';

const majorRating = () => quantity('A', 'rated current of the device upstream', { upTo: 10000 });
const minorRating = () => quantity('A', 'rated current of the device nearer the fault', { upTo: 10000 });

export const selectRatio = worksheetFunction({
  name: 'SELECT_RATIO',
  summary: 'Ratio of the two rated currents.',
  tasks: ['fuse ratio', '1.6 to 1', 'rating above rating'],
  formula: 'major/minor',
  parameters: { major_A: majorRating(), minor_A: minorRating() },
  result: 'ratio',
  basis: [{ source: 'IEC 60269-2', clause: 'gG, ratio 1.6 : 1', fromMemory: true }],
  caution: 'A ratio, not a verdict: SELECT_RATIO_TEST asks for the types too.',
  examples: ['=JW.SELECT_RATIO(250,160)', '=JW.SELECT_RATIO(100,63)'],
  compute: ({ major_A, minor_A }, work) => ratingRatio(major_A, minor_A, work),
});

/** Least rated current of the standard's tables of gates and of joule integrals, A. */
const LEAST_RATED = fuseRatings[0]!;

export const selectRatioTest = testAndMargin({
  stem: 'SELECT_RATIO',
  summary: 'Do two gG links of one range discriminate by the ratio of their ratings?',
  tasks: ['fuse to fuse discrimination', '1.6 to 1 rule', 'do two fuses grade'],
  formula: 'major/minor ≥ least',
  parameters: {
    major_A: majorRating(),
    minor_A: minorRating(),
    major_type: text('type and range of the link upstream, beginning gG', { datum: true }),
    minor_type: text('type and range of the link nearer the fault, alike', { datum: true }),
    least_ratio: ratio('least ratio; 1.6 is the nominal step and counts from 1.56', { atLeast: 1, upTo: 10, default: NOMINAL_STEP }),
  },
  basis: [{ source: 'IEC 60269-2', clause: 'gG, ratio 1.6 : 1', fromMemory: true }],
  caution: 'Same maker, same range, rated volts; aM, other bodies: SELECT_JOULE_TEST.',
  examples: [
    '=JW.SELECT_RATIO_TEST(250,160,"gG range 1","gG range 1")', '=JW.SELECT_RATIO_MARGIN(250,160,"gG range 1","gG range 1")',
    '=JW.SELECT_RATIO_TEST(200,160,"gG","gG")', '=JW.SELECT_RATIO_TEST(250,100,"gG","aM")',
  ],
  judge: ({ major_A, minor_A, major_type, minor_type, least_ratio }, work) => judgeRatio(major_A, minor_A, major_type, minor_type, least_ratio, work),
  cautions: ({ minor_A }) => [minor_A < LEAST_RATED && `minor_A ${figure(minor_A)} A: the limits that the ratio rests on begin at ${LEAST_RATED} A`],
});

/** The usual slip: a pre-arcing figure where the total is asked. Only a figure of the standard's own table gives it away. */
function prearcingForTotal(total: number): string | false {
  const rated = prearcingLimitOf(total);
  return rated !== undefined && `total_minor_A2s ${figure(total)} is the pre-arcing limit of a ${rated} A gG link: take the total, never pre-arcing against pre-arcing`;
}

export const selectJoule = testAndMargin({
  stem: 'SELECT_JOULE',
  summary: 'Joule comparison: does the minor device finish before the major begins to melt?',
  tasks: ['I2t discrimination', 'total let-through against pre-arcing', 'fuse to fuse by joule integral'],
  formula: 'total·(1 + reserve) ≤ pre-arcing',
  parameters: {
    total_minor_A2s: quantity('A²s', 'total joule integral of the device nearer the fault', { upTo: 1e13 }),
    prearc_major_A2s: quantity('A²s', 'pre-arcing joule integral of the device upstream', { upTo: 1e13, datum: true }),
    minor_kA: quantity('kA', 'fault level at which the total was read', { upTo: 300, datum: true }),
    major_kA: quantity('kA', 'fault level at which the pre-arcing integral was read', { upTo: 300, datum: true }),
    reserve_pct: quantity('%', 'reserve on the total', { sign: 'atLeast 0', upTo: 200, default: 0 }),
  },
  basis: [{ source: 'IEC 60269-2 and -5', fromMemory: true }],
  caution: 'Total of the minor against pre-arcing of the major, never pre-arcing against pre-arcing; same volts.',
  examples: [
    '=JW.SELECT_JOULE_TEST(92000,140000,31,31)', '=JW.SELECT_JOULE_MARGIN(92000,140000,31,31)', '=JW.SELECT_JOULE_TEST(150000,140000,31,31)',
    '=JW.SELECT_JOULE_TEST(92000,140000,31,22)', '=JW.SELECT_JOULE_MARGIN(92000,140000,31,31,25)',
  ],
  judge: ({ total_minor_A2s, prearc_major_A2s, minor_kA, major_kA, reserve_pct }, work) => judgeJoule(total_minor_A2s, prearc_major_A2s, minor_kA, major_kA, reserve_pct, work),
  cautions: ({ total_minor_A2s, reserve_pct }) => [prearcingForTotal(total_minor_A2s), kilojoulesTyped('total_minor_A2s', total_minor_A2s), fractionTyped('reserve_pct', reserve_pct)],
});

/** An instantaneous release of so few amperes is most likely one typed in kA. */
const LEAST_PLAUSIBLE_SETTING = 50;
const perhapsKiloamperes = (setting: number | 'off' | undefined): string | false =>
  typeof setting === 'number' && setting < LEAST_PLAUSIBLE_SETTING && `ii_A ${figure(setting)} A is very low for an instantaneous release: is it in kA?`;

export const selectPeak = testAndMargin({
  stem: 'SELECT_PEAK',
  summary: 'Does the peak let through by the minor device stay under the instantaneous release of the breaker upstream?',
  tasks: ['does the breaker upstream stay in', 'fuse below a breaker', 'instantaneous release and cut-off'],
  formula: 'î ≤ √2·Ii·(1 − tolerance)',
  parameters: {
    cutoff_kA: quantity('kA', 'peak let through by the device nearer the fault', { upTo: 700 }),
    ii_A: setting('A', 'instantaneous setting of the breaker upstream, or off', { upTo: 300000, datum: true }),
    ii_tol_pct: instantaneousTolerance(),
  },
  basis: [{ source: 'IEC 60947-2:2016', clause: '8.3.3.1', fromMemory: true }],
  caution: "Releases that see energy or r.m.s. differ: the maker's table rules.",
  examples: ['=JW.SELECT_PEAK_TEST(10.5,12000)', '=JW.SELECT_PEAK_MARGIN(10.5,12000)', '=JW.SELECT_PEAK_TEST(10.5,8000,10)', '=JW.SELECT_PEAK_TEST(10.5,"")'],
  judge: ({ cutoff_kA, ii_A, ii_tol_pct }, work) => judgePeak(cutoff_kA, ii_A, ii_tol_pct, work),
  cautions: ({ ii_A, ii_tol_pct }) => [perhapsKiloamperes(ii_A), fractionTyped('ii_tol_pct', ii_tol_pct)],
});

export const selectTime = testAndMargin({
  stem: 'SELECT_TIME',
  summary: 'Is there time enough between minor and major?',
  tasks: ['time grading', 'grading margin', 'relay to relay'],
  formula: 't major fast − t minor slow ≥ gap',
  parameters: {
    minor_slow_s: quantity('s', 'time of the device nearer the fault at its slow edge, breaking included', { upTo: 1e5 }),
    major_fast_s: quantity('s', 'time of the device upstream at its fast edge', { upTo: 1e5, datum: true }),
    gap_s: quantity('s', 'least difference of time', { upTo: 10, default: 0.1 }),
  },
  basis: [{ source: 'practice' }],
  caution: 'minor_slow_s includes breaking, not only release.',
  examples: ['=JW.SELECT_TIME_TEST(0.15,0.3)', '=JW.SELECT_TIME_MARGIN(0.15,0.3)', '=JW.SELECT_TIME_TEST(0.2,0.3,0.15)', '=JW.SELECT_TIME_TEST("200 ms",0.3)'],
  judge: ({ minor_slow_s, major_fast_s, gap_s }, work) => judgeTimeGap(minor_slow_s, major_fast_s, gap_s, work),
});

export const selectLimit = worksheetFunctions({
  summary: 'Selectivity limit of a pair in kA, and whether that makes it total or partial at this fault level.',
  tasks: ['selectivity limit Is', 'total or partial discrimination', 'up to what fault do they grade'],
  formula: 'tested, or min(Ii·(1 − tolerance), Icw)',
  basis: [{ source: 'IEC 60947-2:2016', clause: '2.17 and annex A', fromMemory: true }],
  caution: "By settings only, unless tested_kA is the maker's table. With ii_A off show the delay too (SELECT_TIME_TEST, SHORTTIME_TEST).",
  examples: [
    '=JW.SELECT_LIMIT(6300,50)', '=JW.SELECT_LIMIT("off",30)', '=JW.SELECT_LIMIT(6300,50,36)',
    '=JW.SELECT_EXTENT(18,JW.SELECT_LIMIT("off",30))', '=JW.SELECT_EXTENT(18,JW.SELECT_LIMIT(6300,50))',
  ],
  members: [
    member({
      name: 'SELECT_LIMIT',
      summary: 'Selectivity limit of a pair: the tested one, else what the settings of the breaker upstream assure.',
      parameters: {
        ii_A: setting('A', 'instantaneous setting of the breaker upstream, or off', { upTo: 300000 }),
        icw_kA: quantity('kA', 'rated short-time withstand current of the breaker upstream', { upTo: 300, defaultWords: 'none' }),
        tested_kA: quantity('kA', "selectivity limit of the maker's table for the pair", { upTo: 300, defaultWords: 'none' }),
        ii_tol_pct: instantaneousTolerance(),
      },
      result: 'kA',
      compute: ({ ii_A, icw_kA, tested_kA, ii_tol_pct }, work) => selectivityLimit(ii_A, icw_kA, tested_kA, ii_tol_pct, work),
      cautions: ({ ii_A, tested_kA, ii_tol_pct }) => [
        tested_kA === undefined && "by settings only: above this only the maker's tested table counts",
        ii_A === 'off' && 'ii_A is off: show the delay too (SELECT_TIME_TEST, SHORTTIME_TEST)',
        tested_kA === undefined && perhapsKiloamperes(ii_A),
        tested_kA === undefined && fractionTyped('ii_tol_pct', ii_tol_pct),
      ],
    }),
    member({
      name: 'SELECT_EXTENT',
      summary: 'Is the selectivity of a pair total or partial at this fault level?',
      formula: 'total if fault ≤ limit, else partial',
      parameters: { fault_kA: faultLevel('fault level at the device nearer the fault'), limit_kA: quantity('kA', 'selectivity limit of the pair', { upTo: 300 }) },
      result: 'word',
      compute: ({ fault_kA, limit_kA }) => selectivityExtent(fault_kA, limit_kA),
    }),
  ],
});

export const backup = testAndMargin({
  stem: 'BACKUP',
  summary: 'Does a device upstream back up a breaker beyond its own breaking capacity?',
  tasks: ['back-up protection', 'cascading, series rating', 'breaker too small for the fault'],
  formula: 'fault ≤ Icu, or fault ≤ tested pair',
  parameters: {
    fault_kA: faultLevel('fault level at the breaker'),
    icu_kA: quantity('kA', 'ultimate breaking capacity of the breaker alone', { upTo: 300, datum: true }),
    takeover_kA: quantity('kA', 'current above which the device upstream clears first', { upTo: 300, datum: true, optional: true }),
    tested_kA: quantity('kA', 'breaking capacity of the tested pair', { upTo: 300, datum: true, optional: true }),
  },
  basis: [{ source: 'IEC 60947-2:2016', clause: 'annex A' }, { source: 'IEC 60364-4-43:2023', clause: '434.5.1' }],
  caution: 'Calculation alone never proves back-up.',
  examples: [
    '=JW.BACKUP_TEST(42,25,12,"")', '=JW.BACKUP_TEST(42,25,12,50)', '=JW.BACKUP_TEST(42,25,31,"")', '=JW.BACKUP_TEST(20,25,"","")',
    '=JW.BACKUP_MARGIN(42,25,12,50)', '=JW.BACKUP_MARGIN(42,25,31,"")',
  ],
  judge: ({ fault_kA, icu_kA, takeover_kA, tested_kA }, work) => judgeBackup(fault_kA, icu_kA, takeover_kA, tested_kA, work),
});

export const selectivity = family('selectivity', [selectRatio, selectRatioTest, selectJoule, selectPeak, selectTime, selectLimit, selectRanges, takeover, backup]);
