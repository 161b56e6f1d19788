import { inParallel, inSeries, referred } from '../core/impedance/combine';
import { generatorImpedance } from '../core/impedance/generator';
import { conductorResistance, lineImpedance } from '../core/impedance/line';
import { motorImpedance, motorRatedCurrent } from '../core/impedance/motor';
import { partFormula, partOf, partUnit } from '../core/impedance/part';
import { declaredImpedance, gridImpedance } from '../core/impedance/supply';
import { transformerImpedance } from '../core/impedance/transformer';
import { transformerZeroImpedance } from '../core/impedance/transformer-zero';
import { family, worksheetFunction } from './kernel/declaration';
import { impedance as impedanceKind, impedances } from './kernel/impedance-kinds';
import { flag, quantity, ratio, text, word } from './kernel/kinds';
import { fractionTyped } from './plausible';
import { csa, efficiency, metal, motorPower, powerFactor, runs, transformerRating, transformerUk, volts } from './shared-parameters';

const IEC_60909 = 'IEC 60909-0:2016';
const length = () => quantity('m', 'length of the run', { upTo: 20000 });
const temperature = () => quantity('°C', 'conductor temperature', { sign: 'any', atLeast: -25, upTo: 350, default: 20 });
const cGreatest = () => ratio('voltage factor of the greatest fault', { atLeast: 1, upTo: 1.1, default: 1.05 });
const sideVolts = (about: string) => quantity('V', about, { atLeast: 50, upTo: 36000 });

const impGrid = worksheetFunction({
  name: 'IMP_GRID',
  summary: 'Impedance of the supply network behind a stated fault level, at the voltage you name.',
  tasks: ['network, utility', 'fault level in MVA', 'source impedance'],
  formula: 'Z = c·Un²/S"kQ',
  parameters: {
    fault_MVA: quantity('MVA', 'fault level of the supply network', { upTo: 100000 }),
    volts_V: sideVolts('line voltage of the side where the impedance is wanted'),
    c_grid: ratio('voltage factor of the network that the fault level is stated for', { atLeast: 0.9, upTo: 1.1, default: 1.1 }),
    r_over_x: ratio('R/X of the supply network', { sign: 'atLeast 0', upTo: 10, default: 0.1 }),
  },
  result: 'impedance',
  basis: [{ source: IEC_60909, clause: '6.2 and table 1', fromMemory: true }],
  caution: 'c_grid belongs to the voltage of the network that the MVA is stated for: above 1 kV 1.10 for the greatest fault, 1.00 for the least. It is not the low-voltage c.',
  examples: ['=JW.IMP_GRID(500,415)', '=JW.IMP_GRID("120 MVA",400,1,0.2)'],
  compute: ({ fault_MVA, volts_V, c_grid, r_over_x }, work) => gridImpedance(fault_MVA, volts_V, c_grid, r_over_x, work),
});

const impDeclared = worksheetFunction({
  name: 'IMP_DECLARED',
  summary: 'Impedance behind a fault level that the supply authority declares in kA at the incoming terminals.',
  tasks: ['declared fault level', 'supply authority kA', 'source impedance at the intake'],
  formula: 'Z = c·Un/(√3·Ik)',
  parameters: {
    fault_kA: quantity('kA', 'declared three-phase fault current', { upTo: 300 }),
    r_over_x: ratio('R/X at the terminals; from a declared power factor p it is p/√(1−p²)', { sign: 'atLeast 0', upTo: 10 }),
    volts_V: volts(),
    c: ratio('voltage factor that the current is stated with', { atLeast: 0.9, upTo: 1.1, default: 1.05 }),
  },
  result: 'impedance',
  basis: [{ source: IEC_60909, clause: '6.2', fromMemory: true }],
  caution: 'A declared greatest level is not a least level: do not use it for a late trip.',
  examples: ['=JW.IMP_DECLARED(25,0.3,400)', '=JW.FAULT_3PH_MAX(JW.IMP_DECLARED("16 kA",0.65,415),415)'],
  compute: ({ fault_kA, r_over_x, volts_V, c }, work) => declaredImpedance(fault_kA, r_over_x, volts_V, c, work),
});

const impTransformer = worksheetFunction({
  name: 'IMP_TRANSFORMER',
  summary: 'Impedance of a two-winding transformer from its plate, with the correction factor of the standard.',
  tasks: ['transformer impedance', 'kVA and per cent', 'uk, losses'],
  formula: 'K_T·(R_T+j·√(Z_T²−R_T²))',
  parameters: {
    rating_kVA: transformerRating(),
    uk_pct: transformerUk(),
    loss_kW: quantity('kW', 'load loss at rated current', { upTo: 200 }),
    volts_V: sideVolts('rated no-load line voltage of the side wanted'),
    c: cGreatest(),
    corrected: flag('apply K_T, as the greatest fault asks', { default: true }),
    tolerance_pct: quantity('%', 'departure of uk from its nominal value', { sign: 'any', atLeast: -30, upTo: 30, default: 0 }),
  },
  result: 'impedance',
  basis: [
    { source: IEC_60909, clause: '6.3.1 and 6.3.3 (K_T)', fromMemory: true },
    { source: 'IEC 60076-1:2011', clause: 'table 1 (tolerance on uk ±10 %)', fromMemory: true },
  ],
  caution: 'K_T is for the greatest fault; for the least set corrected to FALSE. tolerance_pct is a sensitivity, not for the record.',
  examples: ['=JW.IMP_TRANSFORMER(1250,5.5,13.5,415)', '=JW.IMP_TRANSFORMER(500,4,5.5,400,1.05,FALSE)', '=JW.IMP_TRANSFORMER(2000,6,20,400,1.1,TRUE,-10)'],
  compute: ({ rating_kVA, uk_pct, loss_kW, volts_V, c, corrected, tolerance_pct }, work) =>
    transformerImpedance({ rating: rating_kVA, uk: uk_pct, loss: loss_kW, volts: volts_V }, c, corrected, tolerance_pct, work),
  cautions: ({ tolerance_pct, loss_kW, rating_kVA }) => [
    tolerance_pct !== 0 && 'uk tolerance is for sensitivity, not for the record',
    fractionTyped('tolerance_pct', tolerance_pct),
    loss_kW / rating_kVA > 0.025 && 'loss over 2.5 % of the rating: check the plate',
  ],
});

const impTransformerZero = worksheetFunction({
  name: 'IMP_TRANSFORMER_ZERO',
  summary: 'Zero-sequence impedance of a transformer, from its positive-sequence one and its vector group.',
  tasks: ['zero sequence of a transformer', 'Dyn, Yyn', 'earth fault behind a transformer'],
  formula: 'Z0 = (R0/R1)·R+j·(X0/X1)·X',
  parameters: {
    z_mohm: impedanceKind('positive-sequence impedance of the transformer', {}),
    group: text('vector group on the plate, with or without its clock number: Dyn11, Yzn5', {}),
    r0_over_r1: ratio('R0/R1 from the maker; left out, 1 for Dyn, needed for other groups', { sign: 'atLeast 0', upTo: 100, optional: true }),
    x0_over_x1: ratio('X0/X1 from the maker; left out, 1 for Dyn, needed for other groups', { upTo: 100, optional: true }),
  },
  result: 'impedance',
  basis: [{ source: IEC_60909, clause: '6.3', fromMemory: true }],
  caution: 'Ratios for Yyn depend on the core: maker’s figure only.',
  examples: ['=JW.IMP_TRANSFORMER_ZERO("2+9i","Dyn11",1,0.95)', '=JW.IMP_TRANSFORMER_ZERO("3.1+12.4i","Yzn5",0.4,0.1)'],
  compute: ({ z_mohm, group, r0_over_r1, x0_over_x1 }, work) => transformerZeroImpedance(z_mohm, group, r0_over_r1, x0_over_x1, work),
});

const impCable = worksheetFunction({
  name: 'IMP_CABLE',
  summary: 'Impedance of a run of cable of a listed size, at the conductor temperature you name.',
  tasks: ['cable impedance', 'R and X of a run', 'resistance hot, cold'],
  formula: 'R20·(1+0.004·(θ−20))·l/n+j·x·l/n',
  parameters: {
    length_m: length(),
    csa_mm2: csa(),
    metal: metal(),
    runs: runs(),
    temperature_C: temperature(),
    x_mohm_m: quantity('mΩ/m', 'reactance per metre', { sign: 'atLeast 0', upTo: 1, default: 0.08 }),
  },
  result: 'impedance',
  basis: [
    { source: 'IEC 60228:2023', clause: 'class 2', fromMemory: true },
    { source: IEC_60909, clause: '6.4', fromMemory: true },
    { source: 'IEC 60364-5-52:2009', clause: 'annex G (X 0.08 mΩ/m)', fromMemory: true },
  ],
  caution: '20 °C for the greatest fault; hot for the least fault and volt drop. X differs with spacing: give it for single cores.',
  examples: ['=JW.IMP_CABLE(140,120,"Al")', '=JW.IMP_CABLE("0.05 km",70,"Cu",2,90,0.075)'],
  compute: ({ length_m, csa_mm2, metal: of, runs: n, temperature_C, x_mohm_m }, work) =>
    lineImpedance(length_m, conductorResistance(csa_mm2, of, work), x_mohm_m, n, temperature_C, work),
  cautions: ({ length_m, csa_mm2 }) => [
    length_m > 1000 && 'unusual length for low voltage',
    csa_mm2 > 300 && 'direct-current resistance: above 300 mm² R at 50 Hz is some per cent more, so least faults and volt drop are worse; give the maker’s figure by IMP_PER_METRE',
  ],
});

const impPerMetre = worksheetFunction({
  name: 'IMP_PER_METRE',
  summary: 'Impedance of busbar trunking or of any run whose resistance and reactance per metre you have.',
  tasks: ['busbar trunking, busway', 'mΩ per metre', 'rising main'],
  formula: 'R20·(1+0.004·(θ−20))·l/n+j·x·l/n',
  parameters: {
    length_m: length(),
    r20_mohm_m: quantity('mΩ/m', 'resistance per metre at 20 °C', { upTo: 100 }),
    x_mohm_m: quantity('mΩ/m', 'reactance per metre', { sign: 'atLeast 0', upTo: 10 }),
    runs: runs(),
    temperature_C: temperature(),
  },
  result: 'impedance',
  basis: [{ source: IEC_60909, clause: '6.4; data: the maker’s sheet', fromMemory: true }],
  caution: 'Use phase values from the sheet, not the loop values.',
  examples: ['=JW.IMP_PER_METRE(24,0.031,0.019)', '=JW.IMP_PER_METRE(65,"0.32 Ω/km",0.09,3,80)'],
  compute: ({ length_m, r20_mohm_m, x_mohm_m, runs: n, temperature_C }, work) => lineImpedance(length_m, r20_mohm_m, x_mohm_m, n, temperature_C, work),
});

const impMotor = worksheetFunction({
  name: 'IMP_MOTOR',
  summary: 'Impedance of a group of running motors, which feed a fault for its first cycles.',
  tasks: ['motor contribution', 'running motors', 'feed back into the fault'],
  formula: 'Z = Un/(√3·(I_LR/I_rM)·I_rM)',
  parameters: {
    power_kW: motorPower(),
    pf: powerFactor(),
    efficiency: efficiency(),
    volts_V: volts(),
    locked_ratio: ratio('locked-rotor current over rated current', { above: 1, upTo: 15, default: 6 }),
    r_over_x: ratio('R/X of the group', { sign: 'atLeast 0', upTo: 10, default: 0.42 }),
  },
  result: 'impedance',
  basis: [{ source: IEC_60909, clause: '6.10 and 11 (low-voltage groups: R/X 0.42, peak factor 1.3)', fromMemory: true }],
  caution: 'Motors fed through converters that cannot return power are left out.',
  examples: ['=JW.IMP_MOTOR(250,0.87,0.93,415)', '=JW.IMP_MOTOR("90 kW",0.85,"94 %",400,6.5)'],
  compute: ({ power_kW, pf, efficiency: eta, volts_V, locked_ratio, r_over_x }, work) =>
    motorImpedance(motorRatedCurrent(power_kW, pf, eta, volts_V, work), volts_V, locked_ratio, r_over_x, work),
});

const impGenerator = worksheetFunction({
  name: 'IMP_GENERATOR',
  summary: 'Impedance of a low-voltage generator in the first cycles of a fault.',
  tasks: ['generator, standby set', 'subtransient reactance', 'alternator'],
  formula: 'K_G·(R_G+j·X"d)',
  parameters: {
    rating_kVA: quantity('kVA', 'rated power of the generator', { upTo: 10000 }),
    xd2_pct: quantity('%', 'subtransient reactance X"d', { atLeast: 2, upTo: 100 }),
    volts_V: volts(),
    c: cGreatest(),
    corrected: flag('apply K_G, as the greatest fault asks', { default: true }),
    r_over_x: ratio('R over X"d', { sign: 'atLeast 0', upTo: 1, default: 0.15 }),
    pf: ratio('rated power factor', { upTo: 1, default: 0.8 }),
  },
  result: 'impedance',
  basis: [{ source: IEC_60909, clause: '6.6.1 (0.15·X"d for machines up to 1 kV)', fromMemory: true }],
  caution: 'First cycles only. The sustained current may be under three times rated: for a late trip ask the maker for the decay.',
  examples: ['=JW.IMP_GENERATOR(630,14,400)', '=JW.IMP_GENERATOR(1000,11.5,415,1.05,FALSE,0.15)'],
  compute: ({ rating_kVA, xd2_pct, volts_V, c, corrected, r_over_x, pf }, work) =>
    generatorImpedance({ rating: rating_kVA, xd2: xd2_pct, volts: volts_V, rOverX: r_over_x, pf }, c, corrected, work),
  cautions: () => ['sustained fault current may fall below this: ask the maker for the decay'],
});

const impParallel = worksheetFunction({
  name: 'IMP_PARALLEL',
  summary: 'Impedance of branches in parallel.',
  tasks: ['two transformers in parallel', 'parallel cables', 'combine impedances'],
  formula: '1/Σ(1/z)',
  parameters: { z_mohm: impedances('impedances of the branches, one a cell') },
  result: 'impedance',
  basis: [{ source: 'circuit law' }],
  examples: ['=JW.IMP_PARALLEL("2+8i","3+9i")', '=JW.IMP_PARALLEL({"1.2+6i";"1.2+6i";"1.5+7i"})'],
  compute: ({ z_mohm }, work) => inParallel(z_mohm, work),
});

const impSeries = worksheetFunction({
  name: 'IMP_SERIES',
  summary: 'Impedances in series: source, line and return make the loop.',
  tasks: ['add impedances', 'earth loop of source, line and return', 'total Zs'],
  formula: 'Σ z',
  parameters: { z_mohm: impedances('impedances in series, one a cell') },
  result: 'impedance',
  basis: [{ source: 'circuit law' }],
  caution: 'A blank is missing and never zero.',
  examples: ['=JW.IMP_SERIES("0.7+3.5i","8.4+6.2i","16+6.8i")', '=JW.IMP_SERIES({"1+1i";"2+0.5i"},0.25)'],
  compute: ({ z_mohm }, work) => inSeries(z_mohm, work),
});

const impRefer = worksheetFunction({
  name: 'IMP_REFER',
  summary: 'Carries an impedance from one voltage to another.',
  tasks: ['change the voltage base', 'refer to the LV side', 'through the transformer ratio'],
  formula: 'z·(U2/U1)²',
  parameters: {
    z_mohm: impedanceKind('impedance to carry over', {}),
    from_V: sideVolts('line voltage of the side where the impedance stands'),
    to_V: sideVolts('line voltage of the side where it is wanted'),
  },
  result: 'impedance',
  basis: [{ source: IEC_60909, clause: '5.3', fromMemory: true }],
  caution: 'Use the transformer’s no-load ratio.',
  examples: ['=JW.IMP_REFER("150+420i",11000,415)', '=JW.IMP_REFER("2+5i",400,"6.6 kV")'],
  compute: ({ z_mohm, from_V, to_V }, work) => referred(z_mohm, from_V, to_V, work),
});

const impPart = worksheetFunction({
  name: 'IMP_PART',
  summary: 'One figure out of an impedance: R, X, size, R/X, X/R, power factor or angle.',
  tasks: ['R, X, Z of an impedance', 'X/R', 'power factor of the fault'],
  formula: 'R, X, √(R²+X²), R/X, X/R, R/|Z| or atan2(X, R)',
  parameters: {
    z_mohm: impedanceKind('impedance', {}),
    part: word('figure wanted', { R: [], X: [], Z: [], 'R/X': ['r over x'], 'X/R': ['x over r'], pf: ['cos phi', 'power factor'], angle: [] }, {}),
  },
  result: 'as asked',
  unit: ({ part }) => partUnit[part],
  basis: [{ source: 'circuit law' }],
  examples: ['=JW.IMP_PART("3+4i","Z")', '=JW.IMP_PART("1.5+9i","R/X")', '=JW.IMP_PART({1.5,9},"pf")'],
  compute: ({ z_mohm, part }, work) => {
    const value = partOf(z_mohm, part);
    work.step(part, partFormula[part], { R: [z_mohm.re, 'mΩ'], X: [z_mohm.im, 'mΩ'] }, part === 'R' || part === 'X' || part === 'Z' ? [value, 'mΩ'] : value);
    return value;
  },
});

export const impedance = family('impedance', [
  impGrid, impDeclared, impTransformer, impTransformerZero, impCable, impPerMetre, impMotor, impGenerator, impParallel, impSeries, impRefer, impPart,
]);
