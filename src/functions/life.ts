import { afterFault } from '../core/life/after-fault';
import { breakEvenRate, breakEvenWords } from '../core/life/break-even';
import { firstCost, lossCost, reinstateCost } from '../core/life/cost';
import { poleHeat, poleResistanceRise, poleSpread } from '../core/life/pole';
import { presentCost } from '../core/life/present-cost';
import { terminalRise } from '../core/life/terminal-rise';
import { family, member, testAndMargin, worksheetFunction, worksheetFunctions } from './kernel/declaration';
import { count, plainNumber, quantity, ratio, word } from './kernel/kinds';
import { fractionTyped } from './plausible';

const current = (about: string) => quantity('A', about, { upTo: 20000 });
const poleResistance = (about: string) => quantity('mΩ', about, { upTo: 1000 });
const heat = (about: string) => quantity('W', about, { upTo: 10000 });
const money = (about: string) => plainNumber(about, { sign: 'atLeast 0' });
const hours = (about: string) => quantity('h', about, { sign: 'atLeast 0', upTo: 10000 });
const interest = () => quantity('%', 'interest a year', { sign: 'atLeast 0', upTo: 50 });
const years = () => ratio('years', { upTo: 60 });

const arithmetic = [{ source: 'arithmetic' }];
const indicatorOnly = 'an indicator only: says nothing about breaking capacity or insulation';

export const poleHeatFunction = worksheetFunction({
  name: 'POLE_HEAT',
  summary: 'Heat of one or more poles at a current.',
  tasks: ['watts per pole', 'heat in the panel', 'losses of a breaker, fuse'],
  formula: 'n·I²·R',
  parameters: {
    current_A: current('current through each pole'),
    resistance_mohm: poleResistance('resistance of one pole; from a millivolt reading, mV/A = mΩ'),
    poles: count('poles that carry the current', { default: 1, upTo: 4 }),
  },
  result: 'W',
  basis: [{ source: 'I²R' }],
  examples: ['=JW.POLE_HEAT(250,0.21)', '=JW.POLE_HEAT("0.4 kA",0.12,3)'],
  compute: ({ current_A, resistance_mohm, poles }, work) => poleHeat(current_A, resistance_mohm, poles, work),
});

export const millivolt = testAndMargin({
  stem: 'MILLIVOLT',
  summary: 'Has the resistance of a pole risen too far since it was new?',
  tasks: ['millivolt drop test', 'contact resistance', 'worn contacts'],
  formula: 'U/I ≤ ratio·R new; margin ratio·R new/(U/I) − 1',
  parameters: {
    drop_mV: quantity('mV', 'voltage drop across the pole', { upTo: 10000 }),
    current_A: current('direct current at that drop'),
    reference_mohm: quantity('mΩ', 'resistance of the pole when new', { upTo: 1000, datum: true }),
    ratio: ratio('greatest resistance allowed, in multiples of the reference', { atLeast: 1, upTo: 5, default: 1.5 }),
  },
  basis: [{ source: 'practice' }, { source: 'maker’s limit rules' }],
  caution: 'An indicator only, never "fit to return": maker’s procedure, insulation and trip tests still to be done.',
  examples: ['=JW.MILLIVOLT_TEST(62,250,0.19)', '=JW.MILLIVOLT_MARGIN(62,250,0.19)', '=JW.MILLIVOLT_TEST(62,250,"")'],
  judge: ({ drop_mV, current_A, reference_mohm, ratio }, work) => poleResistanceRise(drop_mV, current_A, reference_mohm, ratio, work),
  cautions: () => [indicatorOnly],
});

export const poleSpreadFunctions = testAndMargin({
  stem: 'POLE_SPREAD',
  summary: 'Do the three poles of a device differ too much in resistance?',
  tasks: ['pole resistances differ', 'uneven contacts', 'phase comparison'],
  formula: 'R highest ≤ R lowest·(1 + limit); margin R lowest·(1 + limit)/R highest − 1',
  parameters: {
    r1_mohm: poleResistance('resistance of the first pole'),
    r2_mohm: poleResistance('of the second'),
    r3_mohm: poleResistance('of the third'),
    limit_pct: quantity('%', 'how far the highest may lie above the lowest', { upTo: 500, default: 50 }),
  },
  basis: [{ source: 'common practice of test guides' }],
  caution: 'An indicator only, never "fit to return". The limit is a custom and no figure of a standard: the maker’s rule comes first.',
  examples: ['=JW.POLE_SPREAD_TEST(0.22,0.215,0.2425)', '=JW.POLE_SPREAD_MARGIN("29 µΩ","23 µΩ","96 µΩ")'],
  judge: ({ r1_mohm, r2_mohm, r3_mohm, limit_pct }, work) => poleSpread([r1_mohm, r2_mohm, r3_mohm], limit_pct, work),
  cautions: ({ limit_pct }) => [indicatorOnly, fractionTyped('limit_pct', limit_pct)],
});

export const terminalRiseFunction = worksheetFunction({
  name: 'TERMINAL_RISE',
  summary: 'Terminal temperature rise expected after the loss has changed.',
  tasks: ['temperature rise of terminals', 'hot terminals', 'thermal image'],
  formula: 'ΔT·(P now/P)^n',
  parameters: {
    rise_K: quantity('K', 'rise of the terminals at the loss known', { upTo: 200 }),
    loss_W: heat('heat loss at that rise'),
    loss_now_W: heat('heat loss now'),
    exponent: ratio('1 to be cautious, 0.8 for convection', { atLeast: 0.5, upTo: 1, default: 1 }),
  },
  result: 'K',
  basis: [{ source: 'IEC 60947-2:2016', clause: 'table 7 for the limit 80 K', fromMemory: true }],
  caution: 'Estimate. Limit: LIMIT_TEST(rise, 80).',
  examples: ['=JW.TERMINAL_RISE(41,13.1,19.6)', '=JW.TERMINAL_RISE(41,13.1,19.6,0.8)'],
  compute: ({ rise_K, loss_W, loss_now_W, exponent }, work) => terminalRise(rise_K, loss_W, loss_now_W, exponent, work),
});

export const afterFaultFunction = worksheetFunction({
  name: 'AFTER_FAULT',
  summary: 'What the device needs before it may return to service, as a short sentence.',
  tasks: ['may it go back into service', 'after a short circuit', 'replace or inspect'],
  formula: 'fault against Icu and Ics',
  parameters: {
    fault_kA: quantity('kA', 'fault current that flowed', { upTo: 300 }),
    icu_kA: quantity('kA', 'ultimate breaking capacity, of a fuse its rated breaking capacity', { upTo: 300, datum: true }),
    ics_kA: quantity('kA', 'service breaking capacity, of breakers', { upTo: 300, datum: true }),
    kind: word('what kind of device', { breaker: [], fuse: ['fuse-switch'] }, {}),
  },
  result: 'text',
  basis: [{ source: 'IEC 60947-2:2016', clause: '8.3 sequences II and III', fromMemory: true }],
  caution: 'Never says fit.',
  examples: ['=JW.AFTER_FAULT(31,50,25,"breaker")', '=JW.AFTER_FAULT(31,80,"","fuse")', '=JW.AFTER_FAULT(22,50,25,"breaker")'],
  // A datum left blank arrives as undefined; whether it decides is for the core to say.
  compute: ({ fault_kA, icu_kA, ics_kA, kind }, work) => afterFault(fault_kA, icu_kA, ics_kA, kind, work),
});

export const firstCostFunction = worksheetFunction({
  name: 'FIRST_COST',
  summary: 'First cost of an option.',
  tasks: ['price of an option', 'capital cost', 'fuse-switch or breaker'],
  formula: 'list·(1 − discount) + hours·rate + extras',
  parameters: {
    list_price: money('list price'),
    discount_pct: quantity('%', 'discount on the list price', { sign: 'atLeast 0', upTo: 100 }),
    labour_h: hours('hours of fitting'),
    labour_rate: money('money an hour'),
    extras: plainNumber('other first cost', { sign: 'atLeast 0', default: 0 }),
  },
  result: 'money',
  basis: arithmetic,
  caution: 'Unlike a plain sum, a blank price is #N/A.',
  examples: ['=JW.FIRST_COST(1480,35,4.5,62)', '=JW.FIRST_COST(930,"27.5 %","90 min",62,410)'],
  compute: ({ list_price, discount_pct, labour_h, labour_rate, extras }, work) => firstCost(list_price, discount_pct, labour_h, labour_rate, extras, work),
  cautions: ({ discount_pct }) => [fractionTyped('discount_pct', discount_pct)],
});

export const reinstateCostFunction = worksheetFunction({
  name: 'REINSTATE_COST',
  summary: 'Cost of putting one fault right, with downtime.',
  tasks: ['cost of a fault', 'downtime', 'spares, outage'],
  formula: 'chance·parts + hours·rate + downtime·its rate',
  parameters: {
    parts_price: money('price of the parts'),
    labour_h: hours('hours of work'),
    labour_rate: money('money an hour'),
    downtime_h: hours('hours out of service, travel and waiting among them'),
    downtime_rate: money('money an hour out of service'),
    chance: ratio('that the parts are needed; 1 for fuse links', { sign: 'atLeast 0', upTo: 1, default: 1 }),
  },
  result: 'money',
  basis: arithmetic,
  caution: 'All three links, not one.',
  examples: ['=JW.REINSTATE_COST(186,1.5,62,2,480)', '=JW.REINSTATE_COST(1900,4,62,6,480,0.4)'],
  compute: ({ parts_price, labour_h, labour_rate, downtime_h, downtime_rate, chance }, work) =>
    reinstateCost(parts_price, labour_h, labour_rate, downtime_h, downtime_rate, chance, work),
});

export const lossCostFunction = worksheetFunction({
  name: 'LOSS_COST',
  summary: 'Cost a year of a device’s heat loss.',
  tasks: ['cost of losses', 'energy cost a year', 'running cost'],
  formula: 'P/1000·hours·price',
  parameters: {
    loss_W: quantity('W', 'heat loss', { sign: 'atLeast 0', upTo: 1e6 }),
    hours_h: quantity('h', 'hours a year', { sign: 'atLeast 0', upTo: 8784 }),
    energy_price: money('money a kWh'),
  },
  result: 'money a year',
  basis: arithmetic,
  examples: ['=JW.LOSS_COST(78,5200,0.22)', '=JW.LOSS_COST("0.12 kW",8760,0.18)'],
  compute: ({ loss_W, hours_h, energy_price }, work) => lossCost(loss_W, hours_h, energy_price, work),
});

export const presentCostFunction = worksheetFunction({
  name: 'PRESENT_COST',
  summary: 'Present cost of a first cost and a yearly cost.',
  tasks: ['present value', 'life cycle cost', 'NPV, discount'],
  formula: 'first + yearly·(1 − (1 + i)^−n)/i',
  parameters: { first_cost: money('first cost'), annual_cost: money('yearly cost, paid at the end of each year'), rate_pct: interest(), years: years() },
  result: 'money',
  basis: arithmetic,
  examples: ['=JW.PRESENT_COST(1241,140,7,15)', '=JW.PRESENT_COST(1241,140,0,15)'],
  compute: ({ first_cost, annual_cost, rate_pct, years }, work) => presentCost(first_cost, annual_cost, rate_pct, years, work),
  cautions: ({ rate_pct }) => [fractionTyped('rate_pct', rate_pct)],
});

const breakEvenParameters = () => ({
  fixed_a: money('present cost of A without faults: first cost and yearly losses'),
  fixed_b: money('of B'),
  fault_cost_a: money('cost of one fault with A'),
  fault_cost_b: money('with B'),
  rate_pct: interest(),
  years: years(),
});

interface BreakEvenArguments { readonly fixed_a: number; readonly fixed_b: number; readonly fault_cost_a: number; readonly fault_cost_b: number }
const optionsOf = (args: BreakEvenArguments) => ({ fixedA: args.fixed_a, fixedB: args.fixed_b, faultA: args.fault_cost_a, faultB: args.fault_cost_b });

export const breakEven = worksheetFunctions({
  summary: 'Faults a year at which options A and B cost the same.',
  tasks: ['which is cheaper, fuse or breaker', 'break-even', 'cost against fault rate'],
  formula: '(fixed A − fixed B)/(a·(fault B − fault A)), a = (1 − (1 + i)^−n)/i',
  basis: arithmetic,
  caution: 'Fault rates are the client’s guess: show the break-even, not a verdict. A negative rate: there is none, one option is cheaper at every rate.',
  examples: ['=JW.BREAKEVEN_RATE(2650,2100,950,3100,7,15)', '=JW.BREAKEVEN_WORDS(2650,2100,950,3100,7,15)', '=JW.BREAKEVEN_WORDS(2000,2100,950,3100,7,15)'],
  members: [
    member({
      name: 'BREAKEVEN_RATE',
      parameters: breakEvenParameters(),
      result: 'faults a year',
      compute: (args, work) => breakEvenRate(optionsOf(args), args.rate_pct, args.years, work),
      cautions: (args, result) => [
        typeof result === 'number' && result < 0 && `no such rate: ${breakEvenWords(optionsOf(args), args.rate_pct, args.years)}`,
        fractionTyped('rate_pct', args.rate_pct),
      ],
    }),
    member({
      name: 'BREAKEVEN_WORDS',
      summary: 'Faults a year at which options A and B cost the same, in words.',
      parameters: breakEvenParameters(),
      result: 'text',
      compute: (args, work) => breakEvenWords(optionsOf(args), args.rate_pct, args.years, work),
      cautions: ({ rate_pct }) => [fractionTyped('rate_pct', rate_pct)],
    }),
  ],
});

export const life = family('life', [
  poleHeatFunction, millivolt, poleSpreadFunctions, terminalRiseFunction, afterFaultFunction,
  firstCostFunction, reinstateCostFunction, lossCostFunction, presentCostFunction, breakEven,
]);
