import { digest } from '../core/check/digest';
import { againstLimit } from '../core/check/limit';
import { countVerdicts } from '../core/check/verdict-count';
import { missing, wrongValue } from '../core/refusal';
import { type Unit, convert, kindOf, unitOf } from '../core/units';
import { agree, agreeHint, agreeList, given } from './check-agree';
import { assumed, caution, clause, coreVersion, showWorking, validRange } from './check-questions';
import { isMatrix } from './kernel/cell';
import { family, member, worksheetFunction, worksheetFunctions } from './kernel/declaration';
import { settledReading } from './kernel/kind';
import { anyCell, plainNumber, raw, text, word } from './kernel/kinds';
import { numberOf } from './kernel/number';
import { cells } from './kernel/range-kinds';
import { shownCell } from './kernel/scalar';

const own = [{ source: 'own' }];

const value = (limits: { sign: 'any' | 'above 0' }) => plainNumber('value to be tested', limits);
const SENSES = { 'at most': ['<=', 'max'], 'at least': ['>=', 'min'] } as const;
const sense = () => word('which side of the limit is allowed', SENSES, { default: 'at most' });

/** The margin takes figures above 0 only, so the two names do not share their arguments. */
export const limit = worksheetFunctions({
  summary: 'Any value against any limit, both in one unit, blank-safe: volt drop, disconnection time, terminal rise, peak, cleat strength.',
  tasks: ['compare with a limit', 'pass or fail', 'is it under the limit'],
  formula: 'value ≤ limit, or value ≥ limit; margin limit/value − 1, or value/limit − 1',
  basis: [{ source: 'arithmetic' }],
  examples: ['=JW.LIMIT_TEST(0.31,0.4)', '=JW.LIMIT_MARGIN(0.31,0.4)', '=JW.LIMIT_TEST(4.2,5,"at least")', '=JW.LIMIT_TEST(0.31,"")'],
  members: [
    {
      ...member({
        name: 'LIMIT_TEST',
        parameters: { value: value({ sign: 'any' }), limit: plainNumber('limit, in the unit of the value', { sign: 'any', datum: true }), sense: sense() },
        result: 'verdict',
        compute: ({ value, limit, sense }, work) => againstLimit(value, limit, sense, work),
      }),
      face: 'test',
    },
    {
      ...member({
        name: 'LIMIT_MARGIN',
        summary: 'Margin of any value to any limit, both above 0 and in one unit, per cent.',
        parameters: { value: value({ sign: 'above 0' }), limit: plainNumber('limit, in the unit of the value', {}), sense: sense() },
        result: '%',
        compute: ({ value, limit, sense }, work) => againstLimit(value, limit, sense, work),
      }),
      face: 'margin',
    },
  ],
});

export const verdictCount = worksheetFunction({
  name: 'VERDICT_COUNT',
  summary: 'How many verdicts of each kind a range holds: a count, never a verdict of its own.',
  tasks: ['count pass and FAIL', 'summary of verdicts', 'how many fail'],
  formula: '',
  parameters: { verdicts: cells('range of verdicts; errors, other words and blanks are counted too', {}) },
  result: 'text',
  basis: own,
  caution: 'Counts only. One FAIL or one "not shown" stays what it is, however many pass.',
  examples: ['=JW.VERDICT_COUNT({"pass";"FAIL";"not shown";"pass"})'],
  compute: ({ verdicts }) => countVerdicts(verdicts.map(given)),
});

function unitNamed(symbol: string, name: string): Unit {
  const unit = unitOf(symbol);
  if (unit === undefined) throw wrongValue(name, `${shownCell(symbol)} is not a unit known here`);
  return unit;
}

export const unitConvert = worksheetFunction({
  name: 'UNIT_CONVERT',
  summary: 'Turns a value from one unit into another of the same kind.',
  tasks: ['convert units', 'inches to mm, feet to metres', 'cal/cm² and J/cm²'],
  formula: 'value·from/to',
  parameters: { value: anyCell('number to convert', {}), from: text('unit of the value', {}), to: text('unit wanted', {}) },
  result: 'as asked',
  unit: ({ to }) => unitOf(to) ?? '',
  basis: own,
  caution: 'kA²s is read as 10⁶ A²s; some sheets mean 10³ by it. K is a difference and °C a temperature: they are not converted.',
  examples: ['=JW.UNIT_CONVERT(12.5,"J/cm²","cal/cm²")', '=JW.UNIT_CONVERT(350,"ft","m")'],
  compute: ({ value, from, to }, work) => {
    const source = unitNamed(from, 'from');
    const target = unitNamed(to, 'to');
    if (kindOf(source) !== kindOf(target)) throw wrongValue('to', `${target} is ${kindOf(target)}, ${source} is ${kindOf(source)}`);
    const got = numberOf(value!, 'value', source, settledReading);
    const converted = convert(got, source, target)!;
    work.step('value', 'value·from/to', { value: [got, source] }, [converted, target]);
    return converted;
  },
  cautions: ({ from, to }) => [[from, to].some((unit) => unitOf(unit) === 'kA²s') && 'kA²s read as 10⁶ A²s; some sheets mean 10³ A²s by it'],
});

export const checkDigest = worksheetFunction({
  name: 'CHECK_DIGEST',
  summary: 'Eight characters that change when any input changes.',
  tasks: ['has anything changed', 'checksum of inputs', 'fingerprint'],
  formula: 'FNV-1a, 32 bits',
  parameters: { inputs: raw('cells and ranges to watch', { zeroIsNotBlank: true }) },
  result: 'text',
  basis: own,
  caution: 'Shows a change; is no seal.',
  examples: ['=JW.CHECK_DIGEST({1,2;"a",TRUE})', '=JW.CHECK_DIGEST(63)'],
  compute: ({ inputs }) => {
    if (inputs.length === 0) throw missing('inputs');
    return digest(inputs.map((argument) => (isMatrix(argument) ? argument : [[argument ?? null]])));
  },
});

export const check = family('check', [
  limit, agree, agreeList, agreeHint, showWorking, clause, assumed, caution, validRange, verdictCount, unitConvert, checkDigest, coreVersion,
]);
