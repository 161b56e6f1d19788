import { withstandCurrent, withstandJouleIntegral } from '../core/cable/withstand';
import { family, worksheetFunction } from './kernel/declaration';
import { quantity } from './kernel/kinds';
import { csa, evenSharing, kFactor, runs } from './shared-parameters';

const withstandBasis = [{ source: 'IEC 60364-4-43:2023', clause: '434.5.2' }];

export const cableWithstand = worksheetFunction({
  name: 'CABLE_WITHSTAND',
  summary: 'Joule integral that a conductor withstands without passing its final temperature.',
  formula: '(k·S·n)²',
  parameters: { k: kFactor(), csa_mm2: csa(), runs: runs() },
  result: 'A²s',
  basis: withstandBasis,
  caution: 'Adiabatic: for faults cleared within 5 s. Several runs: even sharing taken; a fault inside one run loads it alone.',
  examples: ['=JW.CABLE_WITHSTAND(115,25)', '=JW.CABLE_WITHSTAND(JW.CABLE_K("Al","XLPE"),240,2)'],
  compute: ({ k, csa_mm2, runs }, work) => withstandJouleIntegral(k, csa_mm2, runs, work),
  cautions: (args) => [evenSharing(args)],
});

export const cableWithstandCurrent = worksheetFunction({
  name: 'CABLE_WITHSTAND_CURRENT',
  summary: 'Fault current that a conductor withstands for a stated time.',
  formula: 'k·S·n/√t',
  parameters: { k: kFactor(), csa_mm2: csa(), time_s: quantity('s', 'fault duration', { upTo: 5 }), runs: runs() },
  result: 'kA',
  basis: withstandBasis,
  caution: 'Over 5 s the method does not hold.',
  examples: ['=JW.CABLE_WITHSTAND_CURRENT(115,25,0.4)', '=JW.CABLE_WITHSTAND_CURRENT(94,150,"200 ms",2)'],
  compute: ({ k, csa_mm2, time_s, runs }, work) => withstandCurrent(k, csa_mm2, time_s, runs, work),
  cautions: (args) => [evenSharing(args)],
});

export const cable = family('cable', [cableWithstand, cableWithstandCurrent]);
