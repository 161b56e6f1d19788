import { lineToEarthFault, loopFault, twoLinesToEarthFault } from '../core/fault/earth';
import { peakCurrent, peakFactor } from '../core/fault/peak';
import { faultFromRating, motorShare } from '../core/fault/rough';
import { directPart, directPartFactor, thermalEquivalent } from '../core/fault/thermal';
import { threePhaseFault, twoPhaseFault } from '../core/fault/three-phase';
import { rounded } from '../core/figure';
import { motorRatedCurrent } from '../core/impedance/motor';
import { atMost } from '../core/judgement';
import { family, member, worksheetFunction, worksheetFunctions } from './kernel/declaration';
import { impedance } from './kernel/impedance-kinds';
import { quantity, ratio, word } from './kernel/kinds';
import { lineVoltsTyped } from './plausible';
import { cMax, cMin, efficiency, hertz, motorPower, powerFactor, transformerRating, transformerUk, volts } from './shared-parameters';

const IEC_60909 = 'IEC 60909-0:2016';
/** An impedance under this size is no low-voltage fault path but a slip of units. */
const LEAST = { sizeAtLeast_mohm: 0.1 } as const;

const z1 = () => impedance('positive-sequence impedance of the fault path', LEAST);
const z2 = () => impedance('negative-sequence impedance of the fault path', { ...LEAST, defaultWords: 'z1_mohm' });
const z0 = () => impedance('zero-sequence impedance of the fault path: z_line + 3·z_return of each run plus the transformer’s', {});
const u0 = () => quantity('V', 'nominal voltage, line to earth', { atLeast: 25, upTo: 600 });
const rOverX = () => ratio('R/X at the place of the fault; for method C Rc/Xc', { sign: 'atLeast 0', upTo: 100 });
const method = () => word('how R/X was found: radial, or method B or C of a meshed network', { plain: ['a', 'radial'], B: ['method b'], C: ['method c'] }, { default: 'plain' });

const fault3ph = worksheetFunctions({
  summary: 'Three-phase fault current, greatest (MAX) or least (MIN) case.',
  tasks: ['short-circuit current', 'prospective fault current', 'kA at the board', 'Ik, PSCC'],
  formula: 'c·Un/(√3·|Z|)',
  basis: [{ source: IEC_60909, clause: '7.2 and table 1', fromMemory: true }],
  caution: 'MAX wants cold conductors, all sources and motors; MIN hot conductors and the least source. c: MAX takes 1.00–1.10, MIN 0.90–1.00, so a swapped case is refused.',
  examples: ['=JW.FAULT_3PH_MAX("2.31+7.9i",415)', '=JW.FAULT_3PH_MAX({1.2,6},"0.4 kV",1.1)', '=JW.FAULT_3PH_MIN("4.6+10.2i",415)'],
  members: ([['FAULT_3PH_MAX', cMax, 'greatest'], ['FAULT_3PH_MIN', cMin, 'least']] as const).map(([name, c, which]) => member({
    name,
    summary: `Three-phase fault current, ${which} case.`,
    parameters: { z_mohm: impedance('impedance of the fault path', LEAST), volts_V: volts(), c: c() },
    result: 'kA',
    compute: ({ z_mohm, volts_V, c: factor }, work) => threePhaseFault(z_mohm, volts_V, factor, work),
  })),
});

const fault2ph = worksheetFunctions({
  summary: 'Two-phase fault current clear of earth, greatest (MAX) or least (MIN) case.',
  tasks: ['line-to-line fault', 'phase to phase', 'two-phase short circuit'],
  formula: 'c·Un/|Z1+Z2|',
  basis: [{ source: IEC_60909, clause: '7.3', fromMemory: true }],
  caution: 'z2_mohm left out is taken as z1_mohm, which gives √3/2 of the three-phase fault.',
  examples: ['=JW.FAULT_2PH_MAX("2.31+7.9i",415)', '=JW.FAULT_2PH_MAX("3+20i",400,1.05,"3+26i")', '=JW.FAULT_2PH_MIN("4.6+10.2i",415)'],
  members: ([['FAULT_2PH_MAX', cMax, 'greatest'], ['FAULT_2PH_MIN', cMin, 'least']] as const).map(([name, c, which]) => member({
    name,
    summary: `Two-phase fault current clear of earth, ${which} case.`,
    parameters: { z1_mohm: z1(), volts_V: volts(), c: c(), z2_mohm: z2() },
    result: 'kA',
    compute: ({ z1_mohm, volts_V, c: factor, z2_mohm }, work) => twoPhaseFault(z1_mohm, z2_mohm ?? z1_mohm, volts_V, factor, work),
  })),
});

const faultEarth = worksheetFunctions({
  summary: 'Line-to-earth fault current by sequence impedances, greatest (MAX) or least (MIN) case.',
  tasks: ['earth fault by sequence impedances', 'zero sequence', 'line-to-earth fault'],
  formula: '√3·c·Un/|Z1+Z2+Z0|',
  basis: [{ source: IEC_60909, clause: '7.5', fromMemory: true }],
  caution: 'Near a transformer this can be above the three-phase fault.',
  examples: ['=JW.FAULT_EARTH_MAX("2+9i","2+8.6i",415)', '=JW.FAULT_EARTH_MIN("20+14i","74+23i",415)'],
  members: ([['FAULT_EARTH_MAX', cMax, 'greatest'], ['FAULT_EARTH_MIN', cMin, 'least']] as const).map(([name, c, which]) => member({
    name,
    summary: `Line-to-earth fault current by sequence impedances, ${which} case.`,
    parameters: { z1_mohm: z1(), z0_mohm: z0(), volts_V: volts(), c: c(), z2_mohm: z2() },
    result: 'kA',
    compute: ({ z1_mohm, z0_mohm, volts_V, c: factor, z2_mohm }, work) =>
      lineToEarthFault({ z1: z1_mohm, z2: z2_mohm ?? z1_mohm, z0: z0_mohm }, volts_V, factor, work),
  })),
});

const fault2phEarth = worksheetFunction({
  name: 'FAULT_2PH_EARTH_MAX',
  summary: 'Current to earth in a fault of two lines and earth, greatest case.',
  tasks: ['double line to earth', 'two phases and earth', 'earth fault current greatest'],
  formula: '√3·c·Un·|Z2|/|Z1·Z2+Z1·Z0+Z2·Z0|',
  parameters: { z1_mohm: z1(), z0_mohm: z0(), volts_V: volts(), c: cMax(), z2_mohm: z2() },
  result: 'kA',
  basis: [{ source: IEC_60909, clause: '7.4', fromMemory: true }],
  caution: 'The current to earth, not that in the lines.',
  examples: ['=JW.FAULT_2PH_EARTH_MAX("2+9i","2+8.6i",415)'],
  compute: ({ z1_mohm, z0_mohm, volts_V, c, z2_mohm }, work) =>
    twoLinesToEarthFault({ z1: z1_mohm, z2: z2_mohm ?? z1_mohm, z0: z0_mohm }, volts_V, c, work),
});

const faultLoop = worksheetFunctions({
  summary: 'Line-to-earth or line-to-neutral fault current from the loop impedance, greatest (MAX) or least (MIN) case.',
  tasks: ['earth fault current', 'earth loop', 'line to neutral fault', 'Zs'],
  formula: 'c·U0/|Z_loop|',
  basis: [
    { source: 'IEC 60364-4-41:2005+A1:2017', clause: '411.4.4', fromMemory: true },
    { source: IEC_60909, clause: 'table 1 (c)', fromMemory: true },
  ],
  caution: 'MIN: loop hot. A three-phase fault is not the least fault.',
  examples: ['=JW.FAULT_LOOP_MAX("6+9i",240)', '=JW.FAULT_LOOP_MIN("120+31i",240)', '=JW.FAULT_LOOP_MIN("0.35 Ω",230)'],
  members: ([['FAULT_LOOP_MAX', cMax, 'greatest'], ['FAULT_LOOP_MIN', cMin, 'least']] as const).map(([name, c, which]) => member({
    name,
    summary: `Line-to-earth or line-to-neutral fault current from the loop impedance, ${which} case.`,
    parameters: { z_loop_mohm: impedance('impedance of the loop: source, line and return', LEAST), u0_V: u0(), c: c() },
    result: 'kA',
    compute: ({ z_loop_mohm, u0_V, c: factor }, work) => loopFault(z_loop_mohm, u0_V, factor, work),
    cautions: ({ u0_V }) => [lineVoltsTyped('u0_V', u0_V)],
  })),
});

const faultRough = worksheetFunction({
  name: 'FAULT_FROM_RATING',
  summary: 'Rough fault current at a transformer’s terminals from its plate alone: a second way to check a result.',
  tasks: ['quick estimate at the transformer', 'rule of thumb', 'kVA and per cent impedance'],
  formula: 'Sr/(√3·Ur·uk/100)',
  parameters: { rating_kVA: transformerRating(), uk_pct: transformerUk(), volts_V: volts() },
  result: 'kA',
  basis: [{ source: 'circuit law' }],
  caution: 'Rough: leaves out grid, cable, motors and correction factor.',
  examples: ['=JW.FAULT_FROM_RATING(1250,5.5,415)', '=JW.FAULT_FROM_RATING("2 MVA",6,400)'],
  compute: ({ rating_kVA, uk_pct, volts_V }, work) => faultFromRating(rating_kVA, uk_pct, volts_V, work),
  cautions: () => ['rough: leaves out grid, cable, motors and correction factor'],
});

const faultMotorShare = worksheetFunction({
  name: 'FAULT_MOTOR_SHARE',
  summary: 'Rated current of the running motors as a per cent of the fault without them: over 1 % they must be counted.',
  tasks: ['do motors matter', 'motor contribution', '1 % rule'],
  formula: '100·I_rM/Ik',
  parameters: {
    power_kW: motorPower(),
    pf: powerFactor(),
    efficiency: efficiency(),
    fault_kA: quantity('kA', 'three-phase fault current without the motors', { upTo: 300 }),
    volts_V: volts(),
  },
  result: '%',
  basis: [{ source: IEC_60909, clause: '6.10 and 11 (1 % rule)', fromMemory: true }],
  caution: 'fault_kA without the motors.',
  examples: ['=JW.FAULT_MOTOR_SHARE(250,0.87,0.93,38,415)', '=JW.FAULT_MOTOR_SHARE(60,0.85,0.92,22,400)'],
  compute: ({ power_kW, pf, efficiency: eta, fault_kA, volts_V }, work) => motorShare(motorRatedCurrent(power_kW, pf, eta, volts_V, work), fault_kA, work),
  cautions: (_args, result) => [!atMost(result as number, 1) && 'over 1 %: the motors must be counted'],
});

/** A first peak over 2.55 times the r.m.s. current asks for a look at R/X. */
const highPeak = (kappa: number): string | false => {
  const times = Math.SQRT2 * kappa;
  return !atMost(times, 2.55) && `peak is ${rounded(times)} times r.m.s., over 2.55: check R/X`;
};

const peakFactorFunction = worksheetFunction({
  name: 'PEAK_FACTOR',
  summary: 'Peak factor κ: how far the first peak stands above √2 times the r.m.s. fault current.',
  tasks: ['kappa', 'X/R', 'asymmetry'],
  formula: 'κ = 1.02+0.98·e^(−3·R/X); B: min(1.8, 1.15·κ); C: R/X·0.4',
  parameters: { r_over_x: rOverX(), method: method() },
  result: 'ratio',
  basis: [{ source: IEC_60909, clause: '8.1.1 and 8.1.2', fromMemory: true }],
  caution: 'plain reads low in a meshed network: name B or C there.',
  examples: ['=JW.PEAK_FACTOR(0.35)', '=JW.PEAK_FACTOR(0.35,"B")', '=JW.PEAK_FACTOR(0.62,"C")'],
  compute: ({ r_over_x, method: by }, work) => peakFactor(r_over_x, by, work),
  cautions: (_args, result) => [highPeak(result as number)],
});

const faultPeak = worksheetFunction({
  name: 'FAULT_PEAK',
  summary: 'Greatest instantaneous fault current, network and motors together.',
  tasks: ['peak current ip', 'first peak', 'asymmetrical fault'],
  formula: '√2·(κ·Ik+1.3·I_M)',
  parameters: {
    network_kA: quantity('kA', 'fault current of the network, without the motors when motor_kA is given', { upTo: 300 }),
    r_over_x: rOverX(),
    method: method(),
    motor_kA: quantity('kA', 'fault current of the motors', { sign: 'atLeast 0', upTo: 100, default: 0 }),
  },
  result: 'kA peak',
  basis: [{ source: IEC_60909, clause: '8.1 and motor group factor 1.3', fromMemory: true }],
  caution: 'network_kA is without the motors when motor_kA is given.',
  examples: ['=JW.FAULT_PEAK(31.5,0.28)', '=JW.FAULT_PEAK(42,0.18,"plain",2.6)', '=JW.FAULT_PEAK(42,0.18,"B")'],
  compute: ({ network_kA, r_over_x, method: by, motor_kA }, work) => peakCurrent(network_kA, peakFactor(r_over_x, by, work), motor_kA, work),
  cautions: ({ r_over_x, method: by }) => [highPeak(peakFactor(r_over_x, by))],
});

const faultThermal = worksheetFunction({
  name: 'FAULT_THERMAL',
  summary: 'Steady current that heats as much as the real, offset fault current over the stated time.',
  tasks: ['thermal equivalent current', 'Ith', 'm and n factors'],
  formula: 'Ik·√(m+n)',
  parameters: {
    fault_kA: quantity('kA', 'initial fault current', { upTo: 300 }),
    kappa: ratio('peak factor', { atLeast: 1.02, upTo: 2 }),
    time_s: quantity('s', 'fault duration', { upTo: 5 }),
    n: ratio('factor of the a.c. part; 1 far from generators', { upTo: 1, default: 1 }),
    hz: hertz(),
  },
  result: 'kA',
  basis: [{ source: IEC_60909, clause: '12 (Joule integral)', fromMemory: true }],
  examples: ['=JW.FAULT_THERMAL(31.5,1.44,0.2)', '=JW.FAULT_THERMAL(50,1.7,1,0.95,60)'],
  compute: ({ fault_kA, kappa, time_s, n, hz }, work) => thermalEquivalent(fault_kA, directPartFactor(kappa, time_s, hz, work), n, work),
});

const faultDirect = worksheetFunction({
  name: 'FAULT_DC',
  summary: 'Decaying direct part of a fault current at a moment, its greatest possible value.',
  tasks: ['d.c. component', 'offset', 'asymmetrical breaking'],
  formula: '√2·Ik·e^(−2π·f·t·R/X)',
  parameters: {
    fault_kA: quantity('kA', 'initial fault current', { upTo: 300 }),
    r_over_x: ratio('R/X of the fault path', { sign: 'atLeast 0', upTo: 100 }),
    time_ms: quantity('ms', 'moment after the start of the fault', { sign: 'atLeast 0', upTo: 5000 }),
    hz: hertz(),
  },
  result: 'kA',
  basis: [{ source: IEC_60909, clause: 'd.c. component', fromMemory: true }],
  caution: 'In a meshed network the plain R/X makes the direct part fall too fast.',
  examples: ['=JW.FAULT_DC(31.5,0.28,10)'],
  compute: ({ fault_kA, r_over_x, time_ms, hz }, work) => directPart(fault_kA, r_over_x, time_ms, hz, work),
});

export const fault = family('fault', [
  fault3ph, fault2ph, faultEarth, fault2phEarth, faultLoop, faultRough, faultMotorShare, peakFactorFunction, faultPeak, faultThermal, faultDirect,
]);
