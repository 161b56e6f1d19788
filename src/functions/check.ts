import { type SheetCell, compareCells, compared, differencePct } from '../core/check/agree';
import { digest } from '../core/check/digest';
import { hint } from '../core/check/hint';
import { againstLimit } from '../core/check/limit';
import { countVerdicts } from '../core/check/verdict-count';
import { missing, outOfRange, wrongValue } from '../core/refusal';
import { type Unit, convert, kindOf, unitOf } from '../core/units';
import { version, versionDate } from '../core/version';
import { type Argument, type Cell, CellError, isMatrix } from './kernel/cell';
import { family, member, worksheetFunction, worksheetFunctions } from './kernel/declaration';
import type { Questions } from './kernel/declaration';
import type { Outcome } from './kernel/call';
import { argumentsShown, assumedOf, clauseOf, stepsOf, workingLine } from './kernel/explain';
import { PassedError, type Reading } from './kernel/kind';
import { anyCell, flag, plainNumber, quantity, raw, text, word } from './kernel/kinds';
import { numberOf } from './kernel/number';
import { cells, column } from './kernel/range-kinds';
import { isBlankCell, shownCell } from './kernel/scalar';

const own = [{ source: 'own' }];
const functionName = () => text('name of the function asked about, with or without JW.', {});
const itsArguments = () => raw('its arguments, in its own order');

/** Another function's call, with its error, if any, passed through. */
function answered(questions: Questions, name: string, argv: readonly Argument[]): Outcome {
  const outcome = questions.ask(name, argv);
  if (outcome.error) throw new PassedError(outcome.error);
  return outcome;
}

export const showWorking = worksheetFunctions({
  summary: 'The working of any other function, in one cell or step by step.',
  formula: '',
  basis: own,
  examples: ['=JW.SHOW_WORKING("FAULT_3PH_MAX","2.31+7.9i",415)', '=JW.SHOW_STEPS("CABLE_WITHSTAND",115,25)'],
  members: [
    member({
      name: 'SHOW_WORKING',
      summary: 'The working of any other function in one line: formula, arguments with units, result to 4 figures.',
      parameters: { function_name: functionName(), argument: itsArguments() },
      result: 'text',
      compute: ({ function_name, argument }, _work, questions) => workingLine(answered(questions, function_name, argument)),
    }),
    member({
      name: 'SHOW_STEPS',
      summary: 'The working of any other function step by step: arguments, steps, result in full.',
      parameters: { function_name: functionName(), argument: itsArguments() },
      result: 'table',
      spill: true,
      compute: ({ function_name, argument }, _work, questions) => {
        const outcome = answered(questions, function_name, argument);
        const { value } = outcome;
        const last = Array.isArray(value) ? `${value.length} rows` : typeof value === 'number' ? value : String(value);
        return {
          headings: ['step', 'value'],
          rows: [
            ...argumentsShown(outcome).map(({ name, text: shown }) => [name, shown]),
            ...stepsOf(outcome).map(({ step, value: shown }) => [step, shown]),
            [outcome.entry.member.name, last],
          ],
        };
      },
    }),
  ],
});

export const clause = worksheetFunction({
  name: 'CLAUSE',
  summary: 'Standard, edition and clause on which a function stands.',
  formula: '',
  parameters: { function_name: functionName() },
  result: 'text',
  basis: own,
  examples: ['=JW.CLAUSE("CABLE_WITHSTAND")'],
  compute: ({ function_name }, _work, questions) => clauseOf(questions.entry(function_name).declaration),
});

export const assumed = worksheetFunction({
  name: 'ASSUMED',
  summary: 'Defaults that a call used because you left them blank; empty if none.',
  formula: '',
  parameters: { function_name: functionName(), argument: itsArguments() },
  result: 'text',
  basis: own,
  examples: ['=JW.ASSUMED("FAULT_3PH_MAX","2.31+7.9i",415)', '=JW.ASSUMED("CABLE_WITHSTAND",115,25,2)'],
  compute: ({ function_name, argument }, _work, questions) => assumedOf(answered(questions, function_name, argument)),
});

export const caution = worksheetFunction({
  name: 'CAUTION',
  summary: 'What is wrong or worth a second look in a call; empty if nothing.',
  formula: '',
  parameters: { function_name: functionName(), argument: itsArguments() },
  result: 'text',
  basis: own,
  examples: ['=JW.CAUTION("CABLE_WITHSTAND",115,"")', '=JW.CAUTION("CABLE_WITHSTAND",115,25,2)'],
  compute: ({ function_name, argument }, _work, questions) => questions.ask(function_name, argument).cautions.join('; '),
});

const tolerance = () => quantity('%', 'difference allowed, per cent of the checker’s figure', { sign: 'atLeast 0', upTo: 100 });
const floor = () => plainNumber('difference allowed in the figures’ own unit', { sign: 'atLeast 0', default: 0 });

/** A cell as a comparison takes it: whatever reads as blank is blank. */
const given = (cell: Cell | undefined): SheetCell => (cell === undefined || isBlankCell(cell) ? null : cell);

/** What a comparison needs in a cell that must hold a quantity. */
function quantityIn(cell: Cell, name: string) {
  const value = compared(cell as Exclude<Cell, null | CellError>);
  if (value.kind === 'words') throw wrongValue(name, `got ${shownCell(cell)}, takes a number or an impedance`);
  return value;
}

export const agree = worksheetFunctions({
  summary: 'Does the designer’s figure agree with the checker’s?',
  formula: '100·(designer/checker − 1)',
  basis: [{ source: 'own rule' }],
  caution: 'A small per cent on the wrong side still counts; a large one on the safe side is still a finding.',
  examples: ['=JW.AGREE(31.2,31.5,2)', '=JW.AGREE(44.5,31.5,2)', '=JW.AGREE_DIFFERENCE(44.5,31.5)'],
  members: [
    member({
      name: 'AGREE',
      parameters: {
        designer: anyCell('the designer’s figure', { datum: true, errors: true }),
        checker: anyCell('the checker’s figure', { datum: true, errors: true }),
        tolerance_pct: tolerance(),
        floor: floor(),
      },
      result: 'text',
      compute: ({ designer, checker, tolerance_pct, floor }, work) => {
        const { finding, differencePct: difference } = compareCells(given(designer), given(checker), tolerance_pct, floor);
        if (difference !== undefined) work.step('difference', '100·(designer/checker − 1)', { designer: String(designer), checker: String(checker) }, [difference, '%']);
        return finding;
      },
    }),
    member({
      name: 'AGREE_DIFFERENCE',
      summary: 'Difference of the designer’s figure from the checker’s, per cent.',
      parameters: { designer: anyCell('the designer’s figure', {}), checker: anyCell('the checker’s figure', {}) },
      result: '%',
      compute: ({ designer, checker }, work) => {
        const difference = differencePct(quantityIn(designer, 'designer'), quantityIn(checker, 'checker'));
        if (difference === undefined) throw outOfRange('checker', 'is zero, or nearly: no per cent of it can be stated');
        work.step('difference', '100·(designer/checker − 1)', { designer: String(designer), checker: String(checker) }, [difference, '%']);
        return difference;
      },
    }),
  ],
});

/** Reads cells that were already checked for blanks that arrive as zero. */
const plainReading: Reading = { blankArrivesAsZero: false, remark: () => undefined };

/** Tolerance of one row, per cent: the one for all, or the row's own. */
function toleranceAt(tolerances: readonly Cell[], row: number): number {
  const one = tolerances.length === 1;
  const cell = tolerances[one ? 0 : row] ?? null;
  const name = one ? 'tolerance_pct' : `tolerance_pct row ${row + 1}`;
  if (isBlankCell(cell)) throw missing(name);
  return tolerance().read(cell, name, plainReading);
}

/** A cell as a list shows it. */
const listed = (cell: Cell): number | string => (typeof cell === 'number' || typeof cell === 'string' ? cell : cell === null ? '' : shownCell(cell));

export const agreeList = worksheetFunction({
  name: 'AGREE_LIST',
  summary: 'Lists only the rows where designer and checker disagree.',
  formula: '100·(designer/checker − 1)',
  parameters: {
    designer: column('the designer’s figures', {}),
    checker: column('the checker’s figures, as many', {}),
    tolerance_pct: column('difference allowed, per cent of the checker’s figure: one cell, or one a row', {}),
    floor: floor(),
    headers: flag('headings above the list', { default: true }),
  },
  result: 'table',
  spill: true,
  basis: [{ source: 'own rule' }],
  caution: 'A small per cent on the wrong side still counts; a large one on the safe side is still a finding.',
  examples: ['=JW.AGREE_LIST({31.2;44.5;0.4},{31.5;31.5;0.4},2)', '=JW.AGREE_LIST({5;6},{5;6},1)'],
  compute: ({ designer, checker, tolerance_pct, floor }) => {
    const height = designer.length;
    if (checker.length !== height) throw wrongValue('checker', `got ${checker.length} rows, takes ${height} as the designer has`);
    if (tolerance_pct.length !== 1 && tolerance_pct.length !== height) throw wrongValue('tolerance_pct', `got ${tolerance_pct.length} rows, takes 1 or ${height}`);
    const rows = designer.flatMap((cell, row) => {
      const [d, c] = [given(cell), given(checker[row])];
      if (d === null && c === null) return [];
      const { finding, differencePct: difference } = compareCells(d, c, toleranceAt(tolerance_pct, row), floor);
      return finding === 'agrees' ? [] : [[row + 1, listed(cell), listed(checker[row]!), difference ?? '', finding]];
    });
    return { headings: ['row', 'designer', 'checker', 'difference %', 'finding'], rows: rows.length ? rows : [['', '', '', '', 'no differences']] };
  },
});

export const agreeHint = worksheetFunction({
  name: 'AGREE_HINT',
  summary: 'Guesses why two figures differ, from their ratio: r.m.s. against peak, line against phase, thousand, c, temperature, k.',
  formula: 'larger/smaller',
  parameters: {
    designer: anyCell('the designer’s figure', {}),
    checker: anyCell('the checker’s figure', {}),
    within_pct: quantity('%', 'how near to a known ratio', { upTo: 5, default: 0.5 }),
  },
  result: 'text',
  basis: [{ source: 'own rule' }],
  caution: 'A guess, to look there first.',
  examples: ['=JW.AGREE_HINT(44.55,31.5)', '=JW.AGREE_HINT(31.5,54.6)', '=JW.AGREE_HINT(31.5,37)'],
  compute: ({ designer, checker, within_pct }) => {
    type Present = Exclude<Cell, null | CellError>;
    return hint(compared(designer as Present), compared(checker as Present), within_pct);
  },
});

const value = (limits: { sign: 'any' | 'above 0' }) => plainNumber('value to be tested', limits);
const SENSES = { 'at most': ['<=', 'max'], 'at least': ['>=', 'min'] } as const;
const sense = () => word('which side of the limit is allowed', SENSES, { default: 'at most' });

/** The margin takes figures above 0 only, so the two names do not share their arguments. */
export const limit = worksheetFunctions({
  summary: 'Any value against any limit, both in one unit, blank-safe: volt drop, disconnection time, terminal rise, peak, cleat strength.',
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

export const validRange = worksheetFunction({
  name: 'VALID_RANGE',
  summary: 'Whether every argument of a call is inside its bounds; if not, all that are outside, with the bounds.',
  formula: '',
  parameters: { function_name: functionName(), argument: itsArguments() },
  result: 'text',
  basis: own,
  caution: 'inside says that the function takes these figures, not that they are right.',
  examples: ['=JW.VALID_RANGE("CABLE_WITHSTAND",115,25)', '=JW.VALID_RANGE("CABLE_WITHSTAND",5,4000,25)'],
  compute: ({ function_name, argument }, _work, questions) => {
    const faults = questions.faults(function_name, argument);
    if (faults.length > 0) return faults.join('; ');
    // Every argument can be read; rules between them, and limits of the method, come out of the call itself.
    const { error } = questions.ask(function_name, argument);
    return error === undefined ? 'inside' : error.message || error.code;
  },
});

export const verdictCount = worksheetFunction({
  name: 'VERDICT_COUNT',
  summary: 'How many verdicts of each kind a range holds: a count, never a verdict of its own.',
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
  formula: 'value·from/to',
  parameters: { value: anyCell('number to convert', {}), from: text('unit of the value', {}), to: text('unit wanted', {}) },
  result: 'as asked',
  unit: ({ to }) => (unitOf(to) === '1' ? '' : unitOf(to) ?? ''),
  basis: own,
  caution: 'kA²s is read as 10⁶ A²s; some sheets mean 10³ by it. K is a difference and °C a temperature: they are not converted.',
  examples: ['=JW.UNIT_CONVERT(12.5,"J/cm²","cal/cm²")', '=JW.UNIT_CONVERT(350,"ft","m")'],
  compute: ({ value, from, to }, work) => {
    const source = unitNamed(from, 'from');
    const target = unitNamed(to, 'to');
    if (kindOf(source) !== kindOf(target)) throw wrongValue('to', `${target} is ${kindOf(target)}, ${source} is ${kindOf(source)}`);
    const got = numberOf(value!, 'value', source, plainReading);
    const converted = convert(got, source, target)!;
    work.step('value', 'value·from/to', { value: [got, source] }, [converted, target]);
    return converted;
  },
  cautions: ({ from, to }) => [[from, to].some((unit) => unitOf(unit) === 'kA²s') && 'kA²s read as 10⁶ A²s; some sheets mean 10³ A²s by it'],
});

export const checkDigest = worksheetFunction({
  name: 'CHECK_DIGEST',
  summary: 'Eight characters that change when any input changes.',
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

/** Standards with their editions, out of the declarations, in one order; one named without its year gives way to the same with it. */
function editions(questions: Questions): string[] {
  const sources = [...new Set(questions.entries.flatMap(({ declaration }) => declaration.basis.map(({ source }) => source)))];
  const standards = sources.filter((source) => /^[A-Z]{2,5}(?: Std)? [A-Z]?\d/.test(source)).sort();
  return standards.filter((source) => !standards.some((other) => other.startsWith(`${source}:`)));
}

export const coreVersion = worksheetFunction({
  name: 'CORE_VERSION',
  summary: 'Version, date and method editions of the calculation core, for the print.',
  formula: '',
  parameters: {},
  result: 'text',
  basis: own,
  examples: ['=JW.CORE_VERSION()'],
  compute: (_args, _work, questions) => [`Joulewright core ${version}, ${versionDate}`, ...editions(questions)].join('; '),
});

export const check = family('check', [
  limit, agree, agreeList, agreeHint, showWorking, clause, assumed, caution, validRange, verdictCount, unitConvert, checkDigest, coreVersion,
]);
