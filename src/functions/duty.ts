import { isUnlimited, judgeLetThrough, letThroughRatio } from '../core/duty/let-through';
import { asymmetricalLetThrough, symmetricalLetThrough } from '../core/duty/prospective-let-through';
import { figure } from '../core/figure';
import { family, testAndMargin, worksheetFunction } from './kernel/declaration';
import { quantity, ratio } from './kernel/kinds';
import { hertz } from './shared-parameters';

const faultLevel = () => quantity('kA', 'prospective r.m.s. fault current at the place', { upTo: 300 });
const joule = (about: string) => quantity('A²s', about, { upTo: 1e13 });

export const letThroughProspective = worksheetFunction({
  name: 'LETTHROUGH_PROSPECTIVE',
  summary: 'Joule integral of the fault current left to flow for a time: earth conductors, and breakers that do not limit.',
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
  cautions: ({ time_s, r_over_x }) => [
    'not for limiting devices: use their let-through points',
    r_over_x === undefined && time_s < 0.1 && 'd.c. part left out of a time below 0.1 s',
  ],
});

export const letThroughTest = testAndMargin({
  stem: 'LETTHROUGH',
  summary: 'Does the conductor, busbar or switch stand what the device lets through?',
  formula: 'let-through ≤ withstand',
  parameters: {
    let_A2s: joule('joule integral that the device lets through'),
    withstand_A2s: quantity('A²s', 'joule integral that the part withstands', { upTo: 1e14, datum: true }),
    let_kA: quantity('kA', 'fault level at which the let-through was read', { upTo: 300, datum: true }),
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
      `let_A2s is half a cycle or more of the prospective ${figure(fault_kA)} kA: right where nothing limits it, not the let-through of a limiting device`,
  ],
});

export const letThroughRatioOf = worksheetFunction({
  name: 'LETTHROUGH_RATIO',
  summary: 'Joule integral let through by one option against another’s, at one fault level.',
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

export const duty = family('duty', [letThroughProspective, letThroughTest, letThroughRatioOf]);
