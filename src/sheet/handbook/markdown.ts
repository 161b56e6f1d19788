import { type HandbookDeclaration, type HandbookFamily, type HandbookFunction, RULES, TITLE } from './content';

/** Text that stands in a cell of a table. */
const cell = (text: string): string => text.replace(/\|/g, '\\|');

function argumentLines({ arguments: list }: HandbookFunction): string[] {
  if (typeof list === 'string') return [`Arguments as ${list}.`];
  if (list.length === 0) return ['Takes no arguments.'];
  return [
    '| argument | what | takes | left out |',
    '|---|---|---|---|',
    ...list.map(({ name, about, takes, leftOut }) => `| \`${name}\` | ${cell(about)} | ${cell(takes)} | ${leftOut === '' ? 'needed' : cell(leftOut)} |`),
  ];
}

const functionLines = (each: HandbookFunction): string[] => [
  `### ${each.name}`, '', each.summary, '',
  `\`${each.signature}\` gives ${each.gives}.`,
  ...(each.formula === '' ? [] : ['', `Formula: ${each.formula}`]),
  '', ...argumentLines(each), '',
];

function exampleLines(examples: HandbookDeclaration['examples']): string[] {
  if (examples.length === 0) return [];
  const shown = examples.flatMap(({ formula, answer }) => (answer.includes('\n') ? [formula, ...answer.split('\n').map((line) => `  ${line}`)] : [`${formula}  →  ${answer}`]));
  return ['```', ...shown, '```', ''];
}

const declarationLines = ({ functions, source, caution, examples }: HandbookDeclaration): string[] => [
  ...functions.flatMap(functionLines),
  `Source: ${source}`, '',
  ...(caution === '' ? [] : [`Caution: ${caution}`, '']),
  ...exampleLines(examples),
];

/** The handbook as Markdown. */
export const handbookMarkdown = (families: readonly HandbookFamily[]): string =>
  `${[
    '<!-- Generated from the declarations in src/functions by `npm run generate`; do not edit. -->', '',
    `# ${TITLE}`, '',
    'Every function with its arguments, formula, source and caution, as declared once in `src/functions`. The answers of the examples were worked when this page was generated, and are rounded to 7 figures.', '',
    ...RULES.map((rule) => `- ${rule}`), '',
    ...families.flatMap(({ title, declarations }) => [`## ${title}`, '', ...declarations.flatMap(declarationLines)]),
  ].join('\n').trimEnd()}\n`;
