import { lineConductorFactor } from '../core/cable/line-conductor-k';
import { withstandCurrent, withstandJouleIntegral } from '../core/cable/withstand';
import { family, worksheetFunction } from './kernel/declaration';
import { quantity, word } from './kernel/kinds';
import { csa, evenSharing, kFactor, metal, runs } from './shared-parameters';

/** Insulations of cables; the mineral ones are not those of separate earth conductors. */
const insulationWords = {
  PVC: ['pvc70', 'pvc 70'], PVC90: ['pvc 90'], XLPE: [], EPR: ['hepr'], rubber60: ['rubber', 'rubber 60'], rubber85: ['rubber 85'],
} as const;
const withMineralWords = { ...insulationWords, mineral: ['mi', 'mineral bare'], 'mineral covered': ['mi covered'] } as const;

const sizeForLimit = () => quantity('mm²', 'conductor cross-section, where it lowers the limit', { upTo: 3000, defaultWords: 'up to 300' });
const ownTemperature = (about: string, atLeast: number, upTo: number) => quantity('°C', about, { sign: 'any', atLeast, upTo, optional: true });
const ownStart = () => ownTemperature('temperature before the fault, in place of the standard’s', -20, 250);
const ownEnd = () => ownTemperature('temperature at the end of the fault, in place of the standard’s', 0, 500);

const withstandBasis = [{ source: 'IEC 60364-4-43:2023', clause: '434.5.2' }];

export const cableK = worksheetFunction({
  name: 'CABLE_K',
  summary: 'Adiabatic factor k of a line conductor, from metal and insulation.',
  formula: 'K·√(ln((β + θf)/(β + θi)))',
  parameters: { metal: metal(), insulation: word('insulation of the cable', withMineralWords, {}), csa_mm2: sizeForLimit(), start_C: ownStart(), end_C: ownEnd() },
  result: 'A√s/mm²',
  basis: [{ source: 'IEC 60364-4-43:2023', clause: 'table 43A' }, { source: 'IEC 60364-5-54:2011', clause: 'annex A' }],
  caution: 'Start temperature is that of full load, not of the day. Without temperatures: the whole number that the tables print.',
  examples: [
    '=JW.CABLE_K("Cu","PVC")', '=JW.CABLE_K("Al","XLPE")', '=JW.CABLE_K("Cu","PVC",400)', '=JW.CABLE_K("copper","EPR",,75)', '=JW.CABLE_K("Cu","mineral")',
  ],
  compute: ({ metal, insulation, csa_mm2, start_C, end_C }, work) =>
    lineConductorFactor(metal, insulation, csa_mm2, { start: start_C, end: end_C }, work),
});

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

export const cable = family('cable', [cableK, cableWithstand, cableWithstandCurrent]);
