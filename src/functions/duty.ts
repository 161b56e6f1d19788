import { judgeBreaking } from '../core/duty/breaking';
import { judgeConditional } from '../core/duty/conditional';
import { isUnlimited, judgeLetThrough, letThroughRatio } from '../core/duty/let-through';
import { judgeMaking } from '../core/duty/making';
import { peakRatio } from '../core/duty/peak-ratio';
import { asymmetricalLetThrough, symmetricalLetThrough } from '../core/duty/prospective-let-through';
import { readFromSheet, sheetReadsHigh } from '../core/duty/sheet-points';
import { judgeShortTime } from '../core/duty/short-time';
import { prearcingCurrent, straightRise } from '../core/duty/straight-rise';
import { figure, rounded } from '../core/figure';
import { atMost } from '../core/judgement';
import { BREAKER_TABLE_ABOVE } from '../core/standards/making-ratios';
import { type Caution, family, member, testAndMargin, worksheetFunction, worksheetFunctions } from './kernel/declaration';
import { quantity, ratio, text, word } from './kernel/kinds';
import { points } from './kernel/range-kinds';
import { amperesTyped, kilojoulesTyped } from './plausible';
import { hertz, volts } from './shared-parameters';

const faultLevel = () => quantity('kA', 'prospective r.m.s. fault current at the place', { upTo: 300 });
const rating = (about: string) => quantity('kA', about, { upTo: 300, datum: true });
const joule = (about: string) => quantity('A²s', about, { upTo: 1e13 });
const prearcing = () => quantity('A²s', 'pre-arcing joule integral of the link', { upTo: 1e10 });
const sheetVolts = () => quantity('V', 'voltage for which the sheet stands', { atLeast: 50, upTo: 1500 });

const faultInAmperes = ({ fault_kA }: { fault_kA: number }): Caution => amperesTyped('fault_kA', fault_kA);
const sheetCautions = (args: { fault_kA: number; sheet_V: number; volts_V: number }): Caution[] => [
  sheetReadsHigh(args.sheet_V, args.volts_V) && `sheet is for ${figure(args.sheet_V)} V, network ${figure(args.volts_V)} V: reads high`,
  faultInAmperes(args),
];

export const cutOffPoints = worksheetFunction({
  name: 'CUTOFF_POINTS',
  summary: 'Peak let through by a limiting device, from your points of its sheet.',
  tasks: ['cut-off current', 'peak let-through', 'current limiting fuse'],
  formula: 'points at Ik, straight on log-log',
  parameters: {
    points: points('cut-off', 'prospective r.m.s. current and peak let through', {}),
    fault_kA: faultLevel(),
    sheet_V: sheetVolts(),
    volts_V: volts(),
  },
  result: 'kA peak',
  basis: [{ source: 'the maker’s sheet' }],
  caution: 'A sheet for a higher voltage reads high. Below the first point the device may not limit: use FAULT_PEAK.',
  examples: [
    '=JW.CUTOFF_POINTS({"kA","kA peak";5,5.6;10,9.2;25,13;50,17;100,22},36,415,400)',
    '=JW.CUTOFF_POINTS({"kA","kA peak";5,5.6;10,9.2;25,13;50,17;100,22},36,400,415)',
  ],
  compute: ({ points, fault_kA, sheet_V, volts_V }, work) => readFromSheet(points, 'kA', fault_kA, sheet_V, volts_V, work),
  cautions: sheetCautions,
});

export const letThroughPoints = worksheetFunction({
  name: 'LETTHROUGH_POINTS',
  summary: 'Joule integral let through by a limiting device, from your points of its sheet.',
  tasks: ['I2t', 'energy let-through', 'total clearing I²t'],
  formula: 'points at Ik, straight on log-log',
  parameters: {
    points: points('joule', 'prospective r.m.s. current and total joule integral', {}),
    fault_kA: faultLevel(),
    sheet_V: sheetVolts(),
    volts_V: volts(),
  },
  result: 'A²s',
  basis: [{ source: 'the maker’s sheet' }],
  caution: 'Total operating, at or above your voltage; not pre-arcing.',
  examples: [
    '=JW.LETTHROUGH_POINTS({5,60000;10,90000;25,130000;50,150000;100,170000},36,415,400)',
    '=JW.LETTHROUGH_POINTS({5,60000;10,90000;25,130000;50,150000;100,170000},3,415,400)',
  ],
  compute: ({ points, fault_kA, sheet_V, volts_V }, work) => readFromSheet(points, 'A²s', fault_kA, sheet_V, volts_V, work),
  cautions: sheetCautions,
});

const estimateParameters = () => ({ prearcing_A2s: prearcing(), fault_kA: faultLevel(), hz: hertz() });
const estimateCautions = (args: { prearcing_A2s: number; fault_kA: number; hz: number }): Caution[] => {
  const { time } = straightRise(args.prearcing_A2s, args.fault_kA, args.hz);
  return ['estimate from a straight rise: not for the record', !atMost(time, 2) && `pre-arcing ${rounded(time)} ms, over 2 ms: reads high`, faultInAmperes(args)];
};

export const cutOffEstimate = worksheetFunctions({
  summary: 'Estimate of a fuse link’s cut-off peak, and of its pre-arcing time, from its pre-arcing joule integral.',
  tasks: ['no cut-off curve at hand', 'cut-off from pre-arcing I²t', 'melting time of a fuse'],
  formula: 'î = (3·√2·ω·I²t·I)^⅓',
  basis: [{ source: 'physics: straight rise at √2·ω·I' }],
  caution: 'Estimate, not for the record; over 2 ms it reads high.',
  examples: ['=JW.CUTOFF_ESTIMATE(120000,40)', '=JW.CUTOFF_ESTIMATE("85 kA²s",25,60)', '=JW.PREARC_TIME(120000,40)', '=JW.PREARC_TIME(900000,12)'],
  members: [
    member({
      name: 'CUTOFF_ESTIMATE',
      summary: 'Estimate of a fuse link’s cut-off peak from its pre-arcing joule integral.',
      parameters: estimateParameters(),
      result: 'kA peak',
      compute: ({ prearcing_A2s, fault_kA, hz }, work) => straightRise(prearcing_A2s, fault_kA, hz, work).peak,
      cautions: estimateCautions,
    }),
    member({
      name: 'PREARC_TIME',
      summary: 'Estimate of a fuse link’s pre-arcing time from its pre-arcing joule integral.',
      formula: 't = (3·√2·ω·I²t·I)^⅓/(√2·ω·I)',
      parameters: estimateParameters(),
      result: 'ms',
      compute: ({ prearcing_A2s, fault_kA, hz }, work) => straightRise(prearcing_A2s, fault_kA, hz, work).time,
      cautions: estimateCautions,
    }),
  ],
});

export const prearcCurrent = worksheetFunction({
  name: 'PREARC_CURRENT',
  summary: 'Current at which a link melts in a short time: where a fuse begins to limit, or takes over from a breaker.',
  tasks: ['where does the fuse begin to limit', 'melting current', 'threshold of limitation'],
  formula: '√(I²t/t)',
  parameters: { prearcing_A2s: prearcing(), time_ms: quantity('ms', 'pre-arcing time', { upTo: 10, default: 10 }) },
  result: 'kA',
  basis: [{ source: 'adiabatic pre-arcing, IEC 60269-1', fromMemory: true }],
  caution: 'Least pre-arcing integral for selectivity, greatest for back-up. Above 10 ms it is no longer adiabatic.',
  examples: ['=JW.PREARC_CURRENT(640000)', '=JW.PREARC_CURRENT(640000,4)'],
  compute: ({ prearcing_A2s, time_ms }, work) => prearcingCurrent(prearcing_A2s, time_ms, work),
});

export const letThroughProspective = worksheetFunction({
  name: 'LETTHROUGH_PROSPECTIVE',
  summary: 'Joule integral of the fault current left to flow for a time: earth conductors, and breakers that do not limit.',
  tasks: ['I2t', 'I²t of a fault left to flow', 'energy without limitation'],
  formula: 'I²·t, with R/X the greatest ∫i²dt over the closing angle',
  parameters: {
    fault_kA: faultLevel(),
    time_s: quantity('s', 'time for which the fault flows', { upTo: 5 }),
    r_over_x: ratio('R/X of the fault', { sign: 'atLeast 0', upTo: 100, defaultWords: 'd.c. part left out' }),
    hz: hertz(),
  },
  result: 'A²s',
  basis: [{ source: 'IEC 60909-0:2016', clause: 'clause 12 (same m + n)', fromMemory: true }],
  caution: 'Not for limiting devices. Below 0.1 s give r_over_x: the d.c. part counts.',
  examples: ['=JW.LETTHROUGH_PROSPECTIVE(6.5,0.4)', '=JW.LETTHROUGH_PROSPECTIVE(22,"60 ms",0.3)'],
  compute: ({ fault_kA, time_s, r_over_x, hz }, work) =>
    r_over_x === undefined ? symmetricalLetThrough(fault_kA, time_s, work) : asymmetricalLetThrough(fault_kA, time_s, r_over_x, hz, work),
  cautions: ({ fault_kA, time_s, r_over_x }) => [
    'not for limiting devices: use their let-through points',
    r_over_x === undefined && time_s < 0.1 && 'd.c. part left out of a time below 0.1 s',
    amperesTyped('fault_kA', fault_kA),
  ],
});

export const letThroughTest = testAndMargin({
  stem: 'LETTHROUGH',
  summary: 'Does the conductor, busbar or switch stand what the device lets through?',
  tasks: ['will the cable stand it', 'let-through against withstand', 'I2t against k²S²', 'is the busbar protected'],
  formula: 'let-through ≤ withstand',
  parameters: {
    let_A2s: joule('joule integral that the device lets through'),
    withstand_A2s: quantity('A²s', 'joule integral that the part withstands', { upTo: 1e14, datum: true }),
    let_kA: rating('fault level at which the let-through was read'),
    fault_kA: faultLevel(),
  },
  basis: [{ source: 'IEC 60364-4-43:2023', clause: '434.5.2' }],
  caution: 'Two joule integrals at two fault levels say nothing.',
  examples: [
    '=JW.LETTHROUGH_TEST(210000,8265625,36,36)', '=JW.LETTHROUGH_MARGIN(210000,8265625,36,36)', '=JW.LETTHROUGH_TEST(210000,8265625,25,36)',
    '=JW.LETTHROUGH_TEST(9000000,8265625,36,36.2)',
  ],
  judge: ({ let_A2s, withstand_A2s, let_kA, fault_kA }, work) => judgeLetThrough(let_A2s, withstand_A2s, let_kA, fault_kA, work),
  cautions: ({ let_A2s, fault_kA }) => [
    isUnlimited(let_A2s, fault_kA) &&
      `let_A2s is half a cycle or more of ${rounded(fault_kA)} kA: right only where the device does not limit`,
    kilojoulesTyped('let_A2s', let_A2s),
    amperesTyped('fault_kA', fault_kA),
  ],
});

export const letThroughRatioOf = worksheetFunction({
  name: 'LETTHROUGH_RATIO',
  summary: 'Joule integral let through by one option against another’s, at one fault level.',
  tasks: ['fuse against breaker let-through', 'compare I²t of two options', 'how much less energy'],
  formula: 'a/b',
  parameters: {
    let_a_A2s: joule('joule integral that the first option lets through'),
    let_b_A2s: joule('joule integral that the second option lets through'),
    a_kA: quantity('kA', 'fault level at which the first was read', { upTo: 300 }),
    b_kA: quantity('kA', 'fault level at which the second was read', { upTo: 300 }),
  },
  result: 'ratio',
  basis: [{ source: 'own rule' }],
  caution: 'Two joule integrals at two fault levels say nothing: the levels may differ by 1 % at most.',
  examples: ['=JW.LETTHROUGH_RATIO(140000,1900000,36,36)'],
  compute: ({ let_a_A2s, let_b_A2s, a_kA, b_kA }, work) => letThroughRatio(let_a_A2s, let_b_A2s, a_kA, b_kA, work),
});

export const breaking = testAndMargin({
  stem: 'BREAKING',
  summary: 'Can the breaker break this fault, and must it serve again afterwards?',
  tasks: ['breaking capacity', 'Icu, Ics', 'is the breaker big enough for the fault'],
  formula: 'service: Ik ≤ Ics; once: Ik ≤ Icu',
  parameters: {
    fault_kA: faultLevel(),
    icu_kA: quantity('kA', 'ultimate breaking capacity at your voltage', { upTo: 300, datum: 'judged' }),
    ics_kA: quantity('kA', 'service breaking capacity at your voltage', { upTo: 300, datum: 'judged' }),
    need: word('must it serve again after the fault', { service: ['ics'], once: ['icu'] }, {}),
    network_pf: ratio('power factor R/Z of the fault', { upTo: 1, defaultWords: 'not compared' }),
  },
  basis: [{ source: 'IEC 60947-2:2016', clause: '8.3 test sequences II, III and table 11', fromMemory: true }],
  caution: 'After a fault above Ics the breaker may not carry its rating. Ratings at your voltage.',
  examples: [
    '=JW.BREAKING_TEST(38,50,37.5,"once")', '=JW.BREAKING_TEST(38,50,37.5,"service")', '=JW.BREAKING_MARGIN(38,50,37.5,"service")',
    '=JW.BREAKING_TEST(38,50,37.5,"once",0.2)', '=JW.BREAKING_TEST(38,50,"","service")',
  ],
  judge: ({ fault_kA, icu_kA, ics_kA, need, network_pf }, work) => judgeBreaking(fault_kA, icu_kA, ics_kA, need, network_pf, work),
  cautions: (args) => {
    const rating = args.need === 'service' ? args.ics_kA : args.icu_kA;
    return [
      args.network_pf !== undefined && rating !== undefined && atMost(rating, BREAKER_TABLE_ABOVE) && `network_pf is not compared: no test power factor is held for a rating up to ${BREAKER_TABLE_ABOVE} kA`,
      faultInAmperes(args),
    ];
  },
});

export const making = testAndMargin({
  stem: 'MAKING',
  summary: 'Can the breaker close on to this fault?',
  tasks: ['making capacity', 'Icm', 'close on to a fault'],
  formula: 'ip ≤ Icm, or n·Icu where Icm is not known',
  parameters: {
    peak_kA: quantity('kA', 'peak fault current at the place', { upTo: 700 }),
    icu_kA: quantity('kA', 'ultimate breaking capacity at your voltage', { upTo: 300, datum: 'judged' }),
    icm_kA: quantity('kA', 'making capacity at your voltage, peak', { upTo: 700, datum: true, optional: true }),
  },
  basis: [{ source: 'IEC 60947-2:2016', clause: '4.3.6.3 and table 2', fromMemory: true }],
  caution: 'Peak against peak: give FAULT_PEAK, not the r.m.s. fault level.',
  examples: ['=JW.MAKING_TEST(76,36,"")', '=JW.MAKING_MARGIN(76,36,"")', '=JW.MAKING_TEST(76,36,80)', '=JW.MAKING_MARGIN(9,"",12)'],
  judge: ({ peak_kA, icu_kA, icm_kA }, work) => judgeMaking(peak_kA, icu_kA, icm_kA, work),
});

export const shortTime = testAndMargin({
  stem: 'SHORTTIME',
  summary: 'Does the breaker, switch or busbar carry this fault for the delay?',
  tasks: ['short-time withstand', 'Icw', '1 s rating of a switchboard'],
  formula: 'Ik ≤ Icw; beyond its time Ik ≤ Icw·√(its time/t)',
  parameters: {
    fault_kA: faultLevel(),
    time_s: quantity('s', 'delay for which the fault is carried', { upTo: 3 }),
    icw_kA: rating('rated short-time withstand current'),
    icw_s: quantity('s', 'time of that rating', { upTo: 3, datum: true }),
  },
  basis: [{ source: 'IEC 61439-1:2020', clause: '3.8.10.3', fromMemory: true }, { source: 'IEC 60947-2:2016', clause: '4.3.6.4', fromMemory: true }],
  caution: 'The joule rule for longer times is the assembly standard’s; for a breaker take the maker’s Icw at the delay. Peak is another test (MAKING_TEST or Ipk).',
  examples: ['=JW.SHORTTIME_TEST(32,0.4,36,1)', '=JW.SHORTTIME_MARGIN(32,0.4,36,1)', '=JW.SHORTTIME_TEST(32,1,50,0.3)', '=JW.SHORTTIME_TEST(32,4,50,1)'],
  judge: ({ fault_kA, time_s, icw_kA, icw_s }, work) => judgeShortTime(fault_kA, time_s, icw_kA, icw_s, work),
  cautions: (args) => [
    !atMost(args.time_s, args.icw_s) && `time_s is over the ${figure(args.icw_s)} s of icw_kA: allowed by equal joule integral, the assembly standard's rule; for a breaker take the maker's Icw at the delay`,
    faultInAmperes(args),
  ],
});

export const conditional = testAndMargin({
  stem: 'CONDITIONAL',
  summary: 'Is the conditional rating enough, and is the protecting device the one it was tested with?',
  tasks: ['conditional short-circuit rating', 'Icc, Iq', 'switch, contactor or board backed by a fuse'],
  formula: 'Ik ≤ conditional rating, device fitted = device tested',
  parameters: {
    fault_kA: faultLevel(),
    conditional_kA: rating('conditional short-circuit rating'),
    device_tested: text('protecting device of the test', { datum: true }),
    device_fitted: text('protecting device fitted', { datum: true }),
  },
  basis: [{ source: 'IEC 61439-1:2020', clause: '5.3.5 and 10.11', fromMemory: true }, { source: 'IEC 60947-3:2020', clause: '4.3.6.4', fromMemory: true }],
  examples: ['=JW.CONDITIONAL_TEST(62,80,"400 A gG type 1","400 a gg  type 1")', '=JW.CONDITIONAL_TEST(62,80,"400 A gG type 1","500 A gG type 1")', '=JW.CONDITIONAL_TEST(82,80,"F1","F1")'],
  judge: ({ fault_kA, conditional_kA, device_tested, device_fitted }, work) => judgeConditional(fault_kA, conditional_kA, device_tested, device_fitted, work),
  cautions: (args) => [faultInAmperes(args)],
});

export const peakRatioOf = worksheetFunction({
  name: 'PEAK_RATIO',
  summary: 'Ratio n of peak to r.m.s. that the product standard takes for a rating.',
  tasks: ['n factor', 'peak to r.m.s.', 'making to breaking ratio'],
  formula: 'n of the table',
  parameters: {
    rating_kA: quantity('kA', 'breaking capacity, or short-time withstand, r.m.s.', { upTo: 300 }),
    kind: word('what is rated', { breaker: [], assembly: [] }, {}),
  },
  result: 'ratio',
  basis: [{ source: 'IEC 60947-2:2016', clause: 'table 2', fromMemory: true }, { source: 'IEC 61439-1:2020', clause: 'table 7', fromMemory: true }],
  caution: 'Assembly peak: LIMIT_TEST(ip, Ipk), or PEAK_RATIO times Icw where Ipk is not stated.',
  examples: ['=JW.PEAK_RATIO(36,"breaker")', '=JW.PEAK_RATIO(5,"assembly")', '=JW.PEAK_RATIO(4.5,"breaker")', '=JW.LIMIT_TEST(76,JW.PEAK_RATIO(35,"assembly")*35)'],
  compute: ({ rating_kA, kind }, work) => peakRatio(rating_kA, kind, work),
});

export const duty = family('duty', [
  cutOffPoints, letThroughPoints, cutOffEstimate, prearcCurrent, letThroughProspective, letThroughTest, letThroughRatioOf, breaking, making, shortTime, conditional, peakRatioOf,
]);
