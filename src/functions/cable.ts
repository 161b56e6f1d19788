import { disconnectionLimit } from '../core/cable/disconnection';
import { earthConductorFactor } from '../core/cable/earth-conductor-k';
import { earthSizeByTable } from '../core/cable/earth-size';
import { finalTemperature } from '../core/cable/final-temperature';
import { neutralCurrent, sizingCurrent } from '../core/cable/harmonic-current';
import { legShare } from '../core/cable/leg-share';
import { lineConductorFactor } from '../core/cable/line-conductor-k';
import { loadCurrent } from '../core/cable/load-current';
import { greatestLoop } from '../core/cable/loop-limit';
import { leastSection, nextListedSize } from '../core/cable/min-size';
import { nonAdiabaticFactor } from '../core/cable/non-adiabatic';
import { judgeOverload } from '../core/cable/overload';
import { cableRating, factorProduct } from '../core/cable/rating';
import { voltDrop } from '../core/cable/volt-drop';
import { withstandCurrent, withstandJouleIntegral } from '../core/cable/withstand';
import { rounded } from '../core/figure';
import { atLeast, atMost } from '../core/judgement';
import { family, testAndMargin, worksheetFunction } from './kernel/declaration';
import { impedance, impedances } from './kernel/impedance-kinds';
import { count, flag, quantity, ratio, word } from './kernel/kinds';
import { fractionTyped, kiloampereTripTyped, kiloamperesTyped, lineVoltsTyped } from './plausible';
import { csa, evenSharing, kFactor, metal, runs } from './shared-parameters';

/** Insulations of cables; the mineral ones are not those of separate earth conductors. */
const insulationWords = {
  PVC: ['pvc70', 'pvc 70'], PVC90: ['pvc 90'], XLPE: [], EPR: ['hepr'], rubber60: ['rubber', 'rubber 60'], rubber85: ['rubber 85'],
} as const;
const withMineralWords = { ...insulationWords, mineral: ['mi', 'mineral bare'], 'mineral covered': ['mi covered'] } as const;
const anyMetal = () => word('metal of the conductor', { copper: ['cu'], aluminium: ['al', 'aluminum'], steel: ['fe'], lead: ['pb'] }, {});

const load = () => quantity('A', 'design current of the load', { upTo: 20000 });
const phases = (about: string) => count(about, { listed: [1, 3], default: 3 });
const factor = (about: string) => ratio(about, { upTo: 1.5, default: 1 });
const powerFactor = () => ratio('power factor of the load, lagging', { upTo: 1 });
const jouleDuty = () => quantity('A²s', 'joule integral of the fault', { upTo: 1e13 });
const faultTime = () => quantity('s', 'fault duration', { upTo: 5 });
const startTemperature = () => ({ sign: 'any', atLeast: -20, upTo: 250 }) as const;
const ownStart = () => quantity('°C', 'temperature before the fault, in place of the standard’s', { ...startTemperature(), optional: true });
const ownEnd = () => quantity('°C', 'temperature at the end of the fault, in place of the standard’s', { sign: 'any', atLeast: 0, upTo: 500, optional: true });
const sizeForLimit = () => quantity('mm²', 'conductor cross-section: the limit of PVC is lower above 300', { upTo: 3000, defaultWords: 'up to 300' });
const factorOfOtherMetal = (about: string) => quantity('A√s/mm²', about, { atLeast: 15, upTo: 300, unitLeftAway: true, defaultWords: 'same metal' });

const K_FORMULA = 'K·√(ln((β + θf)/(β + θi)))';
const withstandBasis = [{ source: 'IEC 60364-4-43:2023', clause: '434.5.2' }];

export const loadCurrentOf = worksheetFunction({
  name: 'LOAD_CURRENT',
  summary: 'Design current of a load from its power.',
  tasks: ['amps from kW', 'full load current', 'design current Ib'],
  formula: 'P/(√3·U·cos φ·η); phases 1: P/(U·cos φ·η)',
  parameters: {
    power_kW: quantity('kW', 'power of the load', { upTo: 20000 }),
    pf: ratio('power factor of the load', { upTo: 1 }),
    volts_V: quantity('V', 'nominal voltage between lines; with phases 1 the voltage across the load', { atLeast: 50, upTo: 1000 }),
    phases: phases('phases of the load'),
    efficiency: ratio('efficiency of the load, where power_kW is what it gives out', { upTo: 1, default: 1 }),
  },
  result: 'A',
  basis: [{ source: 'circuit law' }],
  caution: 'With phases 1, volts_V is the voltage across the load: line to neutral.',
  examples: ['=JW.LOAD_CURRENT(132,0.88,415)', '=JW.LOAD_CURRENT("9.5 kW",0.95,240,1)', '=JW.LOAD_CURRENT(75,0.86,400,3,"93 %")'],
  compute: ({ power_kW, pf, volts_V, phases, efficiency }, work) => loadCurrent(power_kW, pf, volts_V, phases, efficiency, work),
});

export const cableRatingOf = worksheetFunction({
  name: 'CABLE_RATING',
  summary: 'Current a cable may carry: your tabulated figure times your factors.',
  tasks: ['ampacity', 'derating, grouping, ambient', 'current carrying capacity Iz', 'correction factors'],
  formula: 'It·Ca·Cg·Ci·Cc·n',
  parameters: {
    tabulated_A: quantity('A', 'current of the table for the cable and its method of installation', { upTo: 5000 }),
    ca: factor('factor for ambient temperature'),
    cg: factor('factor for grouping'),
    ci: factor('factor for thermal insulation'),
    cc: factor('any other factor'),
    runs: runs(),
  },
  result: 'A',
  basis: [{ source: 'IEC 60364-5-52:2009', clause: '523 (table from the user’s own copy)', fromMemory: true }],
  caution: 'A factor above 1.5 is refused: per cent typed for a fraction. A product of factors outside 0.2 to 1.3 is worth a second look.',
  examples: ['=JW.CABLE_RATING(284,0.94,0.8)', '=JW.CABLE_RATING(239,0.87,1,0.9,,2)'],
  compute: ({ tabulated_A, runs, ...factors }, work) => cableRating(tabulated_A, factors, runs, work),
  cautions: ({ runs, ...factors }) => {
    const product = factorProduct(factors);
    return [
      !(atLeast(product, 0.2) && atMost(product, 1.3)) && `product of factors ${rounded(product)} is outside 0.2 to 1.3`,
      runs > 1 && 'runs share evenly only if length, size and route are alike',
    ];
  },
});

export const overload = testAndMargin({
  stem: 'OVERLOAD',
  summary: 'Is the cable protected against overload by this device?',
  tasks: ['is the cable protected against overload', 'In between Ib and Iz', '1.45 rule'],
  formula: 'Ib ≤ In ≤ Iz and I2 ≤ 1.45·Iz',
  parameters: {
    load_A: load(),
    device_A: quantity('A', 'rated current or setting of the device', { upTo: 20000, datum: true }),
    cable_A: quantity('A', 'current the cable may carry as installed', { upTo: 20000, datum: true }),
    i2_A: quantity('A', 'current that surely operates the device in the conventional time', { upTo: 40000, datum: true }),
  },
  basis: [{ source: 'IEC 60364-4-43:2023', clause: '433.1' }],
  caution: 'gG at 1.6 times needs cable_A ≥ 1.103·device_A. Some national rules take the fuse as 1.45: then give i2_A = 1.45·device_A and say so.',
  examples: [
    '=JW.OVERLOAD_TEST(180,200,235,JW.CONVENTIONAL_CURRENT(200,"gG"))', '=JW.OVERLOAD_MARGIN(180,200,235,JW.CONVENTIONAL_CURRENT(200,"gG"))',
    '=JW.OVERLOAD_TEST(180,200,212,JW.CONVENTIONAL_CURRENT(200,"gG"))', '=JW.OVERLOAD_TEST(180,200,"",260)',
  ],
  judge: ({ load_A, device_A, cable_A, i2_A }, work) => judgeOverload(load_A, device_A, cable_A, i2_A, work),
  cautions: ({ load_A, device_A, cable_A }) => [kiloamperesTyped('load_A', load_A), kiloamperesTyped('device_A', device_A), kiloamperesTyped('cable_A', cable_A)],
});

export const voltDropOf = worksheetFunction({
  name: 'VOLT_DROP',
  summary: 'Volt drop along a run.',
  tasks: ['voltage drop', 'is the run too long', 'volts lost along the cable'],
  formula: '√3·Ib·(R·cos φ + X·sin φ); phases 1: 2·Ib·(…)',
  parameters: {
    load_A: load(),
    pf: powerFactor(),
    z_mohm: impedance('impedance of one line conductor of the whole run, hot', {}),
    phases: phases('3: drop between lines; 1: out and back'),
  },
  result: 'V',
  basis: [{ source: 'IEC 60364-5-52:2009', clause: 'annex G', fromMemory: true }],
  caution: 'Lagging power factor; hot conductor. Per cent: 100·V/Un in a plain formula.',
  examples: ['=JW.VOLT_DROP(132,0.88,JW.IMP_CABLE(110,70,"Cu",1,90))', '=JW.VOLT_DROP(24,1,"46+2i",1)'],
  compute: ({ load_A, pf, z_mohm, phases }, work) => voltDrop(load_A, pf, z_mohm, phases, work),
});

export const harmonicCurrent = worksheetFunction({
  name: 'HARMONIC_CURRENT',
  summary: 'Current to size a cable for when third harmonics load the neutral, or the neutral current itself.',
  tasks: ['third harmonics, triplen', 'neutral overloaded', 'size the neutral'],
  formula: 'IN = 3·h3·Ib; sizing: Ib, Ib/0.86, IN/0.86 or IN by h3 up to 15, 33, 45 % or more',
  parameters: {
    load_A: load(),
    third_pct: quantity('%', 'third harmonic of the line current', { sign: 'atLeast 0', upTo: 100 }),
    what: word('what is asked', { sizing: ['design'], neutral: [] }, { default: 'sizing' }),
  },
  result: 'A',
  basis: [{ source: 'IEC 60364-5-52:2009', clause: 'annex E', fromMemory: true }],
  caution: 'Compare the sizing current with the rating for three loaded conductors.',
  examples: ['=JW.HARMONIC_CURRENT(39,20)', '=JW.HARMONIC_CURRENT(39,40)', '=JW.HARMONIC_CURRENT(39,50)', '=JW.HARMONIC_CURRENT(85,28,"neutral")'],
  compute: ({ load_A, third_pct, what }, work) => (what === 'neutral' ? neutralCurrent : sizingCurrent)(load_A, third_pct, work),
  cautions: ({ third_pct }) => [fractionTyped('third_pct', third_pct)],
});

export const cableK = worksheetFunction({
  name: 'CABLE_K',
  summary: 'Adiabatic factor k of a line conductor, from metal and insulation.',
  tasks: ['k factor of a cable', 'k for copper PVC, XLPE', 'adiabatic constant'],
  formula: K_FORMULA,
  parameters: { metal: metal(), insulation: word('insulation of the cable', withMineralWords, {}), csa_mm2: sizeForLimit(), start_C: ownStart(), end_C: ownEnd() },
  result: 'A√s/mm²',
  basis: [{ source: 'IEC 60364-4-43:2023', clause: 'table 43A' }, { source: 'IEC 60364-5-54:2011', clause: 'annex A' }],
  caution: 'Start temperature is that of full load, not of the day. Without temperatures: the whole number that the tables print.',
  examples: [
    '=JW.CABLE_K("Cu","PVC")', '=JW.CABLE_K("Al","XLPE")', '=JW.CABLE_K("Cu","PVC",400)', '=JW.CABLE_K("copper","EPR",,75)', '=JW.CABLE_K("Cu","mineral")',
  ],
  compute: ({ metal, insulation, csa_mm2, start_C, end_C }, work) => lineConductorFactor(metal, insulation, csa_mm2, { start: start_C, end: end_C }, work),
});

export const earthK = worksheetFunction({
  name: 'EARTH_K',
  summary: 'Adiabatic factor k of an earth conductor: in the cable, separate, armour or bare.',
  tasks: ['k factor of cpc, protective conductor', 'armour, SWA, gland earth', 'k for bare earth'],
  formula: K_FORMULA,
  parameters: {
    metal: anyMetal(),
    where: word('where the earth conductor runs', {
      'in cable': ['core', 'incorporated', 'bunched'], separate: [], armour: ['armor', 'sheath'],
      bare: ['bare normal'], 'bare restricted': ['restricted'], 'bare fire risk': ['fire risk'],
    }, {}),
    insulation: word('insulation of the conductor, or of the cores inside the armour; bare ones need none', insulationWords, { defaultWords: 'none' }),
    csa_mm2: sizeForLimit(),
    start_C: ownStart(),
    end_C: ownEnd(),
  },
  result: 'A√s/mm²',
  basis: [{ source: 'IEC 60364-5-54:2011', clause: 'tables A.54.2 to A.54.6', fromMemory: true }],
  caution: 'Steel armour is not copper; wrong start temperature moves k by a fifth.',
  examples: [
    '=JW.EARTH_K("Cu","separate","PVC")', '=JW.EARTH_K("steel","armour","XLPE")', '=JW.EARTH_K("Al","in cable","EPR")', '=JW.EARTH_K("Cu","bare restricted")',
    '=JW.EARTH_K("Cu","separate")',
  ],
  compute: ({ metal, where, insulation, csa_mm2, start_C, end_C }, work) =>
    earthConductorFactor(metal, where, insulation, csa_mm2, { start: start_C, end: end_C }, work),
});

export const cableWithstand = worksheetFunction({
  name: 'CABLE_WITHSTAND',
  summary: 'Joule integral that a conductor withstands without passing its final temperature.',
  tasks: ['will the cable stand it', 'k²S²', 'short-circuit withstand of a cable', 'thermal withstand'],
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
  tasks: ['how many kA does the cable stand', 'one-second rating', 'short-time current of a cable'],
  formula: 'k·S·n/√t',
  parameters: { k: kFactor(), csa_mm2: csa(), time_s: faultTime(), runs: runs() },
  result: 'kA',
  basis: withstandBasis,
  caution: 'Over 5 s the method does not hold.',
  examples: ['=JW.CABLE_WITHSTAND_CURRENT(115,25,0.4)', '=JW.CABLE_WITHSTAND_CURRENT(94,150,"200 ms",2)'],
  compute: ({ k, csa_mm2, time_s, runs }, work) => withstandCurrent(k, csa_mm2, time_s, runs, work),
  cautions: (args) => [!atLeast(args.time_s, 0.1) && 'below 0.1 s the d.c. part of the fault counts: compare joule integrals (CABLE_WITHSTAND)', evenSharing(args)],
});

export const nonAdiabatic = worksheetFunction({
  name: 'NON_ADIABATIC_FACTOR',
  summary: 'How much more a conductor stands because some heat leaves it during the fault: multiply the withstand current.',
  tasks: ['long fault, heat escapes', 'non-adiabatic', 'IEC 60949 factor'],
  formula: '√(1 + X·√(t/S) + Y·t/S)',
  parameters: {
    csa_mm2: csa(),
    time_s: faultTime(),
    metal: metal(),
    insulation: word('insulation, up to 3 kV', { PVC: ['pvc70', 'pvc 70'], XLPE: [], EPR: ['hepr'] }, {}),
  },
  result: 'ratio',
  basis: [{ source: 'IEC 60949:1988', clause: '5 (conductors, up to 3 kV)', fromMemory: true }],
  caution: 'Multiply a current by ε, a joule integral by ε².',
  examples: ['=JW.NON_ADIABATIC_FACTOR(25,3,"Cu","PVC")', '=JW.NON_ADIABATIC_FACTOR(150,5,"Al","EPR")'],
  compute: ({ csa_mm2, time_s, metal, insulation }, work) => nonAdiabaticFactor(csa_mm2, time_s, metal, insulation, work),
});

export const cableMinSize = worksheetFunction({
  name: 'CABLE_MIN_SIZE',
  summary: 'Least conductor section for a joule integral.',
  tasks: ['smallest cable for the fault', 'adiabatic equation', 'size of the cpc, earth conductor'],
  formula: '√(I²t)/(k·n)',
  parameters: {
    joule_A2s: jouleDuty(),
    k: kFactor(),
    runs: runs(),
    listed: flag('TRUE for the next IEC 60228 size up', { default: false }),
  },
  result: 'mm²',
  basis: [{ source: 'IEC 60364-5-54:2011', clause: '543.1.2' }, ...withstandBasis],
  caution: 'A floor, not a choice: rating, volt drop and loop still decide.',
  examples: ['=JW.CABLE_MIN_SIZE(8200000,143)', '=JW.CABLE_MIN_SIZE(8200000,143,1,TRUE)', '=JW.CABLE_MIN_SIZE(JW.LETTHROUGH_PROSPECTIVE(6.5,0.4),115)'],
  compute: ({ joule_A2s, k, runs, listed }, work) => {
    const section = leastSection(joule_A2s, k, runs, work);
    return listed ? nextListedSize(section, work) : section;
  },
  cautions: (args) => [evenSharing(args)],
});

export const cableFinalTemp = worksheetFunction({
  name: 'CABLE_FINAL_TEMP',
  summary: 'Conductor temperature after a fault.',
  tasks: ['how hot does the cable get', 'conductor temperature after a short circuit', 'insulation damaged'],
  formula: '(β + θi)·e^(I²t/(K·S·n)²) − β',
  parameters: {
    joule_A2s: jouleDuty(),
    csa_mm2: csa(),
    start_C: quantity('°C', 'conductor temperature before the fault', startTemperature()),
    metal: anyMetal(),
    runs: runs(),
  },
  result: '°C',
  basis: [{ source: 'IEC 60364-5-54:2011', clause: 'annex A, inverse' }],
  caution: 'Above 250 °C no common insulation survives.',
  examples: ['=JW.CABLE_FINAL_TEMP(12000000,50,90,"Cu")', '=JW.CABLE_FINAL_TEMP(9.5E6,70,30,"steel")'],
  compute: ({ joule_A2s, csa_mm2, start_C, metal, runs }, work) => finalTemperature(joule_A2s, csa_mm2, start_C, metal, runs, work),
  cautions: (args, result) => [typeof result === 'number' && !atMost(result, 250) && 'above 250 °C no common insulation survives', evenSharing(args)],
});

export const cableLegShare = worksheetFunction({
  name: 'CABLE_LEG_SHARE',
  summary: 'Current in one of several unequal cables in parallel.',
  tasks: ['parallel cables', 'unequal current sharing', 'current in each run'],
  formula: 'I·|Zp/Z|, Zp = 1/Σ(1/Z)',
  parameters: {
    z_legs_mohm: impedances('impedance of each leg, one cell a leg', 'range'),
    current_A: quantity('A', 'current of all legs together', { upTo: 300000 }),
    leg: count('which leg, counted from 1', { upTo: 24 }),
  },
  result: 'A',
  basis: [{ source: 'IEC 60364-4-43:2023', clause: '433.4', fromMemory: true }],
  examples: ['=JW.CABLE_LEG_SHARE({"4.2+3.1i";"5.0+3.7i"},640,1)', '=JW.CABLE_LEG_SHARE({"4.2+3.1i";"5.0+3.7i";"4.2+3.1i"},"0.9 kA",2)'],
  compute: ({ z_legs_mohm, current_A, leg }, work) => legShare(z_legs_mohm, current_A, leg, work),
});

export const earthSizeTable = worksheetFunction({
  name: 'EARTH_SIZE_TABLE',
  summary: 'Earth conductor size by the table rule, from the line size.',
  tasks: ['earth wire size', 'cpc, PE size by table', 'half the line conductor'],
  formula: 'S up to 16, 16 up to 35, S/2 above; times k1/k2',
  parameters: {
    csa_mm2: csa(),
    line_k: factorOfOtherMetal('adiabatic factor k of the line conductor'),
    earth_k: factorOfOtherMetal('adiabatic factor k of the earth conductor'),
  },
  result: 'mm²',
  basis: [{ source: 'IEC 60364-5-54:2011', clause: '543.1.1, table 54.2' }],
  examples: ['=JW.EARTH_SIZE_TABLE(25)', '=JW.EARTH_SIZE_TABLE(120,143,46)', '=JW.EARTH_SIZE_TABLE(10)'],
  compute: ({ csa_mm2, line_k, earth_k }, work) => earthSizeByTable(csa_mm2, line_k, earth_k, work),
});

export const loopMax = worksheetFunction({
  name: 'LOOP_MAX',
  summary: 'Greatest loop impedance at which the device still trips in time.',
  tasks: ['earth loop impedance limit', 'maximum Zs', 'will it trip in time on an earth fault'],
  formula: 'c·U0/Ia·f',
  parameters: {
    trip_A: quantity('A', 'current that surely trips the device in time: slow edge of its curve, or its band', { upTo: 300000 }),
    u0_V: quantity('V', 'nominal voltage line to earth', { atLeast: 25, upTo: 600 }),
    c: ratio('voltage factor of the least fault', { atLeast: 0.9, upTo: 1, default: 0.95 }),
    cold_factor: ratio('0.8 for the limit of a reading taken cold', { atLeast: 0.5, upTo: 1, default: 1 }),
  },
  result: 'mΩ',
  basis: [{ source: 'IEC 60364-4-41:2005+A1:2017', clause: '411.4.4' }, { source: 'IEC 60364-6', clause: 'cold reading', fromMemory: true }],
  examples: ['=JW.LOOP_MAX(1150,240)', '=JW.LOOP_MAX(JW.BAND_MINIATURE(32,"C","trip"),230,0.95,0.8)'],
  compute: ({ trip_A, u0_V, c, cold_factor }, work) => greatestLoop(trip_A, u0_V, c, cold_factor, work),
  cautions: ({ trip_A, u0_V }) => [kiloampereTripTyped('trip_A', trip_A), lineVoltsTyped('u0_V', u0_V)],
});

export const disconnectLimit = worksheetFunction({
  name: 'DISCONNECT_LIMIT',
  summary: 'Longest disconnection time allowed, a.c.',
  tasks: ['disconnection time', '0.4 s or 5 s', 'TN, TT, automatic disconnection'],
  formula: 'table 41.1 by system and U0; distribution TN 5 s, TT 1 s',
  parameters: {
    system: word('type of system earthing', { TN: ['tn-s', 'tn-c', 'tn-c-s', 'tn-cs'], TT: [], IT: [] }, {}),
    circuit: word('type of circuit', { final: [], distribution: ['dist', 'submain', 'sub-main'] }, {}),
    u0_V: quantity('V', 'nominal voltage line to earth', { above: 50, upTo: 600 }),
  },
  result: 's',
  basis: [{ source: 'IEC 60364-4-41:2005+A1:2017', clause: '411.3.2 and table 41.1' }, { source: 'IEC 60364-4-41:2005+A1:2017', clause: '411.6.4 for IT', fromMemory: true }],
  caution: 'Final: socket circuits up to 63 A, fixed loads up to 32 A; larger ones take "distribution". 240 V falls in the 0.2 s row.',
  examples: ['=JW.DISCONNECT_LIMIT("TN","final",240)', '=JW.DISCONNECT_LIMIT("TT","distribution",230)', '=JW.DISCONNECT_LIMIT("tn-s","final",230)'],
  compute: ({ system, circuit, u0_V }, work) => disconnectionLimit(system, circuit, u0_V, work),
  cautions: ({ system, circuit, u0_V }) => [
    lineVoltsTyped('u0_V', u0_V),
    system === 'IT' && 'IT, second fault: exposed parts earthed together; in groups take TT',
    circuit === 'distribution' && 'a final circuit up to 63 A with sockets, or 32 A without, takes final',
  ],
});

export const cable = family('cable', [
  loadCurrentOf, cableRatingOf, overload, voltDropOf, harmonicCurrent, cableK, earthK, cableWithstand, cableWithstandCurrent, nonAdiabatic,
  cableMinSize, cableFinalTemp, cableLegShare, earthSizeTable, loopMax, disconnectLimit,
]);
