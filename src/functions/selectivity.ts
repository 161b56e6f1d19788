import { figure } from '../core/figure';
import { judgeJoule, prearcingLimitOf } from '../core/selectivity/joule';
import { NOMINAL_STEP, judgeRatio, ratingRatio } from '../core/selectivity/ratio';
import { family, testAndMargin, worksheetFunction } from './kernel/declaration';
import { quantity, ratio, text } from './kernel/kinds';

const majorRating = () => quantity('A', 'rated current of the device upstream', { upTo: 10000 });
const minorRating = () => quantity('A', 'rated current of the device nearer the fault', { upTo: 10000 });

export const selectRatio = worksheetFunction({
  name: 'SELECT_RATIO',
  summary: 'Ratio of the two rated currents.',
  formula: 'major/minor',
  parameters: { major_A: majorRating(), minor_A: minorRating() },
  result: 'ratio',
  basis: [{ source: 'IEC 60269-2', clause: 'gG, ratio 1.6 : 1', fromMemory: true }],
  caution: 'A ratio, not a verdict: SELECT_RATIO_TEST asks for the types too.',
  examples: ['=JW.SELECT_RATIO(250,160)', '=JW.SELECT_RATIO(100,63)'],
  compute: ({ major_A, minor_A }, work) => ratingRatio(major_A, minor_A, work),
});

export const selectRatioTest = testAndMargin({
  stem: 'SELECT_RATIO',
  summary: 'Do two gG links of one range discriminate by the ratio of their ratings?',
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
});

/** The usual slip: a pre-arcing figure where the total is asked. Only a figure of the standard's own table gives it away. */
function prearcingForTotal(total: number): string | false {
  const rated = prearcingLimitOf(total);
  return rated !== undefined && `total_minor_A2s ${figure(total)} is the pre-arcing limit of a ${rated} A gG link: take the total, never pre-arcing against pre-arcing`;
}

export const selectJoule = testAndMargin({
  stem: 'SELECT_JOULE',
  summary: 'Joule comparison: does the minor device finish before the major begins to melt?',
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
  cautions: ({ total_minor_A2s }) => [prearcingForTotal(total_minor_A2s)],
});

export const selectivity = family('selectivity', [selectRatio, selectRatioTest, selectJoule]);
