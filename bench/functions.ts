import { parseComplex } from '../src/core/complex';
import { withstandJouleIntegral } from '../src/core/cable/withstand';
import { threePhaseFault } from '../src/core/fault/three-phase';
import { arcCurrent } from '../src/core/hazard/arc-current';
import { silent } from '../src/core/working';
import { call } from '../src/functions/kernel/call';
import type { Argument } from '../src/functions/kernel/cell';
import type { Entry, Questions } from '../src/functions/kernel/declaration';
import { catalogue } from '../src/sheet/catalogue';
import { exampleArguments } from '../tests/support/hostile-tuples';
import { type Work, measure } from './calls';
import { type Options, type Row, median, time, times } from './figures';

const LISTS = 1024;
const lists = <T>(make: (at: number) => T): readonly T[] => Array.from({ length: LISTS }, (_, at) => make(at));
const entryOf = (name: string): Entry => catalogue.find(name)!;
const declared = (entry: Entry, all: readonly (readonly Argument[])[]): Work => (round) => call(catalogue, entry, all[round % LISTS]!).value as number;

const rate = (seconds: number): string => `${time(seconds)}, ${(1e-6 / seconds).toFixed(2)}·10⁶/s`;

/** A call as every host makes it, against the formula alone with the same arguments. */
export function functions({ repeats }: Options): Row[] {
  const withstand = lists((at): [number, number, number] => [76 + at % 67, 1.5 + at % 300, 1 + at % 4]);
  const fault = lists((at): [string, number] => [`${1 + at / 100}+${2 + at / 70}i`, 380 + at % 40]);
  const arc = lists((at): [number, number, 'VCB', number] => [5 + at / 20, 10 + at % 50, 'VCB', 380 + at % 40]);
  const plain = measure({
    declared: declared(entryOf('CABLE_WITHSTAND'), withstand),
    formula: (round) => { const [k, csa, runs] = withstand[round % LISTS]!; return withstandJouleIntegral(k, csa, runs, silent); },
    inline: (round) => { const [k, csa, runs] = withstand[round % LISTS]!; return (k * csa * runs) ** 2; },
  }, repeats);
  const long = measure({
    declared: declared(entryOf('ARC_CURRENT'), arc),
    formula: (round) => { const [bolted, gap, electrodes, volts] = arc[round % LISTS]!; return arcCurrent({ fault: bolted, gap, electrodes, volts }, false, silent); },
  }, repeats);
  const text = measure({
    declared: declared(entryOf('FAULT_3PH_MAX'), fault),
    formula: (round) => { const [z, volts] = fault[round % LISTS]!; return threePhaseFault(parseComplex(z)!, volts, 1.05, silent); },
    inline: (round) => { const [z, volts] = fault[round % LISTS]!; const { re, im } = parseComplex(z)!; return (1.05 * volts) / (Math.sqrt(3) * Math.hypot(re, im)); },
  }, repeats);
  const against = (what: string, { seconds, ratio }: typeof plain | typeof text | typeof long, formula: string): Row[] => [
    { what: `${what}: rate`, measured: rate(seconds.declared), aim: '≥ 10⁶/s', met: seconds.declared <= 1e-6 },
    { what: `${what}: against ${formula}`, measured: time(seconds.declared), against: time(seconds.formula), ratio: times(ratio('declared', 'formula')), aim: '≤ 3×', met: ratio('declared', 'formula') <= 3 },
  ];
  return [
    ...against('CABLE_WITHSTAND', plain, 'its core formula'),
    { what: 'CABLE_WITHSTAND: against (k·S·n)² written in place', measured: time(plain.seconds.declared), against: time(plain.seconds.inline), ratio: times(plain.ratio('declared', 'inline')) },
    ...against('ARC_CURRENT', long, 'its core formula'),
    ...against('FAULT_3PH_MAX of complex text', text, 'parse and core formula'),
    { what: 'FAULT_3PH_MAX: against parse and c·U/(√3·|Z|) written in place', measured: time(text.seconds.declared), against: time(text.seconds.inline), ratio: times(text.ratio('declared', 'inline')) },
    everyNumber(Math.max(3, repeats >> 1)),
  ];
}

const noQuestions = undefined as unknown as Questions;

/** All functions that give a number from one cell each, by their first example: the call against its own formula with clean arguments. */
function everyNumber(repeats: number): Row {
  const found = catalogue.entries.flatMap((entry) => {
    const argv = exampleArguments(entry).find((list) => typeof call(catalogue, entry, list).value === 'number');
    return argv && entry.declaration.family !== 'check' && entry.declaration.family !== 'network' ? [{ entry, argv }] : [];
  });
  const results = found.map(({ entry, argv }) => {
    const args = { ...call(catalogue, entry, argv).args! };
    const { seconds, ratio } = measure({
      declared: () => call(catalogue, entry, argv).value as number,
      formula: () => (entry.member.compute(args, silent, noQuestions) === undefined ? NaN : 1),
    }, repeats, 5_000);
    return { name: entry.member.name, seconds: seconds.declared, ratio: ratio('declared', 'formula') };
  });
  const slowest = results.reduce((a, b) => (b.seconds > a.seconds ? b : a));
  const middle = median(results.map(({ seconds }) => seconds));
  return {
    what: `all ${results.length} functions with a number as result, by an example: middle one, slowest`, measured: `${time(middle)}; ${slowest.name} ${time(slowest.seconds)}`,
    against: 'formula with clean arguments', ratio: times(median(results.map(({ ratio }) => ratio))), aim: '≥ 10⁶/s (middle)', met: middle <= 1e-6,
  };
}
