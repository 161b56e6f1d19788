import { agreement, compared, differencePct } from '../core/check/agree';
import { missing, outOfRange, wrongValue } from '../core/refusal';
import { version, versionDate } from '../core/version';
import { type Argument, type Cell, CellError } from './kernel/cell';
import { family, member, worksheetFunction, worksheetFunctions } from './kernel/declaration';
import type { Questions } from './kernel/declaration';
import type { Outcome } from './kernel/call';
import { argumentsShown, assumedOf, clauseOf, stepsOf, workingLine } from './kernel/explain';
import { PassedError } from './kernel/kind';
import { anyCell, plainNumber, quantity, raw, text } from './kernel/kinds';
import { isBlankCell } from './kernel/scalar';

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

type Present = Exclude<Cell, null | CellError>;
const isBlank = (cell: Cell | undefined): boolean => isBlankCell(cell);

function agreeInWords(designer: Cell | undefined, checker: Cell | undefined, tolerancePct: number, floorValue: number): string {
  if (designer instanceof CellError || checker instanceof CellError) return 'error in a cell';
  if (isBlank(designer) && isBlank(checker)) return 'both are missing';
  if (isBlank(designer) || isBlank(checker)) return 'one is missing';
  return agreement(compared(designer as Present), compared(checker as Present), tolerancePct, floorValue);
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
        designer: anyCell('the designer’s figure', { optional: true, errors: true }),
        checker: anyCell('the checker’s figure', { optional: true, errors: true }),
        tolerance_pct: tolerance(),
        floor: floor(),
      },
      result: 'text',
      compute: ({ designer, checker, tolerance_pct, floor: floorValue }) => agreeInWords(designer, checker, tolerance_pct, floorValue),
    }),
    member({
      name: 'AGREE_DIFFERENCE',
      summary: 'Difference of the designer’s figure from the checker’s, per cent.',
      parameters: { designer: anyCell('the designer’s figure', {}), checker: anyCell('the checker’s figure', {}) },
      result: '%',
      compute: ({ designer, checker }) => {
        if (isBlank(designer)) throw missing('designer');
        if (isBlank(checker)) throw missing('checker');
        const [d, c] = [compared(designer as Present), compared(checker as Present)];
        if (d.kind === 'words') throw wrongValue('designer', `got "${String(designer)}", takes a number or an impedance`);
        if (c.kind === 'words') throw wrongValue('checker', `got "${String(checker)}", takes a number or an impedance`);
        const difference = differencePct(d, c);
        if (difference === undefined) throw outOfRange('checker', 'is zero: no per cent of it can be stated');
        return difference;
      },
    }),
  ],
});

/** Standards with their editions, out of the declarations, in one order. */
const editions = (questions: Questions): string[] =>
  [...new Set(questions.entries.flatMap(({ declaration }) => declaration.basis.map(({ source }) => source)))].filter((source) => /^(?:IEC|IEEE) /.test(source)).sort();

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

export const check = family('check', [agree, showWorking, clause, assumed, caution, coreVersion]);
