import type { Catalogue } from '../../functions/kernel/catalogue';
import { NAMESPACE } from '../../functions/kernel/catalogue';
import type { Declaration, Family, Member } from '../../functions/kernel/declaration';
import { clauseOf } from '../../functions/kernel/explain';
import { argumentFacts } from '../metadata/argument-facts';

/** What a worked example answers, as a cell shows it. */
export type Worked = (formula: string) => string;

const FAMILIES: Readonly<Record<Family, string>> = {
  impedance: 'Impedances of the elements',
  fault: 'Fault currents at one place',
  network: 'Boards and couplers',
  cable: 'Conductors',
  curve: 'Time-current curves',
  duty: 'Let-through and adequacy',
  selectivity: 'Selectivity and back-up',
  hazard: 'Forces and arc energy',
  life: 'After the fault, and cost',
  check: 'Checking aids',
};

const HEAD = `<!-- Generated from the declarations in src/functions by \`npm run generate\`; do not edit. -->

# Handbook of worksheet functions

Every function stands here with its arguments, formula, source and caution, as declared once in \`src/functions\`.
The answers of the examples were worked when this page was generated.

- A blank is never zero: a needed argument left blank gives \`#N/A\`, an optional one its default, and \`ASSUMED\` tells which.
- A number may carry its unit as text: \`"63 kA"\` where kA or A is asked. Another kind of unit gives \`#VALUE!\` and names both.
- Outside the limits given here the answer is \`#NUM!\`: nothing is clamped and nothing extrapolated.
- Desktop Excel hands a blank cell over as 0. Where 0 has a meaning of its own, write it as text: \`"0"\`.
- A calculation aid, not a design approval: local codes, the maker's current data and a licensed engineer decide.
`;

/** Text that stands in a table cell. */
const cell = (text: string): string => text.replace(/\|/g, '\\|');

const signature = (member: Member): string => {
  const shown = Object.entries(member.parameters).map(([name, kind]) => {
    const label = kind.shape === 'repeating' ? `${name} …` : name;
    return kind.optional ? `[${label}]` : label;
  });
  return `${NAMESPACE}.${member.name}(${shown.join(', ')})`;
};

const resultOf = ({ result, spill }: Member): string => {
  const what = result === 'impedance' ? 'complex text in mΩ' : result === 'verdict' ? 'pass, FAIL or not shown' : result === 'table' ? 'a table' : result === '1' || result === 'ratio' ? 'a ratio' : result;
  return spill ? `${what}, filling several cells` : what;
};

function argumentTable(member: Member): string[] {
  const parameters = Object.entries(member.parameters);
  if (parameters.length === 0) return ['Takes no arguments.'];
  return [
    '| argument | what | takes | left out |',
    '|---|---|---|---|',
    ...parameters.map(([name, kind]) => {
      const { about, takes, leftOut } = argumentFacts(kind);
      return `| \`${name}\` | ${cell(about)} | ${cell(takes)} | ${leftOut === '' ? 'needed' : cell(leftOut)} |`;
    }),
  ];
}

const sameArguments = (a: Member, b: Member): boolean =>
  JSON.stringify(Object.entries(a.parameters).map(([name, kind]) => [name, argumentFacts(kind)])) ===
  JSON.stringify(Object.entries(b.parameters).map(([name, kind]) => [name, argumentFacts(kind)]));

function memberSection(member: Member, before: Member | undefined): string[] {
  const again = before !== undefined && sameArguments(before, member);
  return [
    `### ${member.name}`,
    '',
    member.summary,
    '',
    `\`${signature(member)}\` gives ${resultOf(member)}.`,
    ...(member.formula === '' ? [] : ['', `Formula: ${member.formula}`]),
    '',
    ...(again ? [`Arguments as ${before.name}.`] : argumentTable(member)),
    '',
  ];
}

function declarationSection(declaration: Declaration, worked: Worked | undefined): string[] {
  const { members, caution, examples } = declaration;
  const lines = members.flatMap((member, i) => memberSection(member, members[i - 1]));
  lines.push(`Source: ${clauseOf(declaration)}`, '');
  if (caution !== '') lines.push(`Caution: ${caution}`, '');
  if (examples.length > 0) {
    const answers = examples.map((formula) => (worked ? `${formula}  →  ${worked(formula)}` : formula));
    lines.push('```', ...answers, '```', '');
  }
  return lines;
}

/** The handbook as Markdown, one section for each declaration, from the declarations alone. */
export function handbook(catalogue: Catalogue, worked?: Worked): string {
  const lines: string[] = [HEAD];
  for (const [family, title] of Object.entries(FAMILIES)) {
    const declarations = catalogue.declarations.filter((declaration) => declaration.family === family);
    if (declarations.length === 0) continue;
    lines.push(`## ${title}`, '');
    for (const declaration of declarations) lines.push(...declarationSection(declaration, worked));
  }
  return `${lines.join('\n').trimEnd()}\n`;
}
