import { type HandbookDeclaration, type HandbookFamily, type HandbookFunction, EDITION, RULES, TITLE } from './content';
import type { ShownWorking, WorkedExample } from './worked';

/** Text that stands in a cell of a table. */
const cell = (text: string): string => text.replace(/\|/g, '\\|');
const row = (...cells: readonly string[]): string => `| ${cells.join(' | ')} |`;

function argumentLines({ arguments: list }: HandbookFunction): string[] {
  if (typeof list === 'string') return [`Arguments as ${list}.`];
  if (list.length === 0) return ['Takes no arguments.'];
  return [
    row('argument', 'what', 'takes', 'left out'),
    '|---|---|---|---|',
    ...list.map(({ name, about, takes, leftOut }) => row(`\`${name}\``, cell(about), cell(takes), leftOut === '' ? 'needed' : cell(leftOut))),
  ];
}

const functionLines = (each: HandbookFunction): string[] => [
  `### ${each.name}`, '', each.summary, '',
  `\`${each.signature}\` gives ${each.gives}.`,
  ...(each.formula === '' ? [] : ['', `Formula: ${each.formula}`]),
  '', ...argumentLines(each), '',
];

function answerLines({ formula, answer, cautions }: WorkedExample): string[] {
  const only = answer.length === 1 && answer[0]!.length === 1 ? answer[0]![0]! : undefined;
  return [
    ...(only === undefined ? [formula, ...answer.map((cells) => `  ${cells.join(' | ')}`)] : [`${formula}  →  ${only}`]),
    ...cautions.map((caution) => `  caution: ${caution}`),
  ];
}

const workingLines = (formula: string, { name, given, assumed, steps, result }: ShownWorking): string[] => [
  `Working of \`${formula}\`: ${given.map((each) => `${each.name} ${each.text}`).join(', ')}.${assumed === '' ? '' : ` Defaults: ${assumed}.`}`, '',
  row('step', 'from', 'value'),
  '|---|---|---|',
  ...steps.map(({ step, inputs, value }) => row(cell(step), cell(inputs), cell(value))),
  row(`\`${name}\``, '', cell(result)), '',
];

const exampleLines = (examples: readonly WorkedExample[]): string[] => [
  ...(examples.length === 0 ? [] : ['```', ...examples.flatMap(answerLines), '```', '']),
  ...examples.flatMap(({ formula, working }) => (working ? workingLines(formula, working) : [])),
];

const declarationLines = ({ functions, source, caution, tasks, examples }: HandbookDeclaration): string[] => [
  ...functions.flatMap(functionLines),
  `Source: ${source}`, '',
  ...(caution === '' ? [] : [`Caution: ${caution}`, '']),
  ...(tasks.length === 0 ? [] : [`Asked for as: ${tasks.join('; ')}`, '']),
  ...exampleLines(examples),
];

/** Headings are anchors by their own name wherever Markdown is shown with links. */
const contents = (families: readonly HandbookFamily[]): string[] =>
  families.map(({ title, declarations }) => `- ${title}: ${declarations.flatMap(({ functions }) => functions).map(({ name }) => `[${name}](#${name.toLowerCase()})`).join(', ')}`);

/** The handbook as Markdown. */
export const handbookMarkdown = (families: readonly HandbookFamily[]): string =>
  `${[
    '<!-- Generated from the declarations in src/functions by `npm run generate`; do not edit. -->', '',
    `# ${TITLE}`, '',
    `${EDITION}. Every function with its arguments, formula, source and caution, as declared once in \`src/functions\`. The examples were worked when this page was generated; answers are rounded to 7 figures, steps to 6.`, '',
    ...RULES.map((rule) => `- ${rule}`), '',
    ...contents(families), '',
    ...families.flatMap(({ title, declarations }) => [`## ${title}`, '', ...declarations.flatMap(declarationLines)]),
  ].join('\n').trimEnd()}\n`;
