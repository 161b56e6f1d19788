import { counted } from '../core/figure';
import { version, versionDate } from '../core/version';
import type { Argument } from './kernel/cell';
import { member, worksheetFunction, worksheetFunctions } from './kernel/declaration';
import type { Questions } from './kernel/declaration';
import type { Outcome } from './kernel/call';
import { argumentsShown, assumedOf, clauseOf, stepsOf, workingLine } from './kernel/explain';
import { PassedError } from './kernel/kind';
import { raw, text } from './kernel/kinds';

/** Functions that ask about another function: its working, its defaults, its clause, its cautions. */

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
  tasks: ['show the working', 'step by step', 'calculation for the file'],
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
        const last = Array.isArray(value) ? counted(value.length, 'row') : typeof value === 'number' ? value : String(value);
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
  tasks: ['which standard', 'clause, regulation', 'edition'],
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
  tasks: ['what was assumed', 'defaults taken', 'left blank'],
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
  tasks: ['warnings', 'what to look out for', 'second look'],
  formula: '',
  parameters: { function_name: functionName(), argument: itsArguments() },
  result: 'text',
  basis: own,
  examples: ['=JW.CAUTION("CABLE_WITHSTAND",115,"")', '=JW.CAUTION("CABLE_WITHSTAND",115,25,2)'],
  compute: ({ function_name, argument }, _work, questions) => questions.ask(function_name, argument).cautions.join('; '),
});

export const validRange = worksheetFunction({
  name: 'VALID_RANGE',
  summary: 'Whether every argument of a call is inside its bounds; if not, all that are outside, with the bounds.',
  tasks: ['valid range', 'limits of the method', 'is the input in range'],
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

/** Standards with their editions, out of the declarations, in one order; one named without its year gives way to the same with it. */
function editions(questions: Questions): string[] {
  const sources = [...new Set(questions.entries.flatMap(({ declaration }) => declaration.basis.map(({ source }) => source)))];
  const standards = sources.filter((source) => /^[A-Z]{2,5}(?: Std)? [A-Z]?\d/.test(source)).sort();
  return standards.filter((source) => !standards.some((other) => other.startsWith(`${source}:`)));
}

export const coreVersion = worksheetFunction({
  name: 'CORE_VERSION',
  summary: 'Version, date and method editions of the calculation core, for the print.',
  tasks: ['version', 'which release', 'for the print'],
  formula: '',
  parameters: {},
  result: 'text',
  basis: own,
  examples: ['=JW.CORE_VERSION()'],
  compute: (_args, _work, questions) => [`Joulewright core ${version}, ${versionDate}`, ...editions(questions)].join('; '),
});
