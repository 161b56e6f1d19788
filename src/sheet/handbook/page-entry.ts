import type { HandbookArgument, HandbookDeclaration, HandbookFunction } from './content';
import { escaped, tag } from './html';
import type { ShownWorking, WorkedExample } from './worked';

/** One declaration of the handbook as a part of its page. */

const argumentRow = ({ name, about, takes, leftOut }: HandbookArgument): string =>
  `<tr><th scope="row">${escaped(name)}</th>${tag('td', about)}${tag('td', takes, 'takes')}${leftOut === '' ? tag('td', 'needed', 'left-out needed') : tag('td', leftOut, 'left-out')}</tr>`;

function argumentTable({ arguments: list }: HandbookFunction): string {
  if (typeof list === 'string') return `<p>Arguments as <a href="#${list}">${list}</a>.</p>`;
  if (list.length === 0) return '<p>Takes no arguments.</p>';
  return `<table class="arguments"><thead><tr><th scope="col">argument</th><th scope="col">what</th><th scope="col">takes</th><th scope="col">left out</th></tr></thead><tbody>\n${list.map(argumentRow).join('\n')}\n</tbody></table>`;
}

const functionPart = (each: HandbookFunction): string => [
  `<h3 id="${each.name}"><a href="#${each.name}">${each.name}</a></h3>`,
  tag('p', each.summary, 'summary'),
  `<p><code>${escaped(each.signature)}</code> gives ${escaped(each.gives)}.</p>`,
  ...(each.formula === '' ? [] : [`<p>Formula: ${tag('span', each.formula, 'formula')}</p>`]),
  argumentTable(each),
].join('\n');

/** Wide ones can be moved sideways, with the keyboard as well. */
const spill = (rows: WorkedExample['answer'], formula: string): string =>
  `<div class="wide" tabindex="0" role="group" aria-label="${escaped(`Cells that ${formula} fills`)}"><table class="spill"><tbody>\n${rows.map((cells) => `<tr>${cells.map((text) => tag('td', text)).join('')}</tr>`).join('\n')}\n</tbody></table></div>`;

function workingPart({ name, given, assumed, steps, result }: ShownWorking): string {
  const rows = steps.map(({ step, inputs, value }) => `<tr><th scope="row">${escaped(step)}${inputs === '' ? '' : tag('span', inputs, 'inputs')}</th>${tag('td', value)}</tr>`);
  return [
    `<p class="given">${escaped(given.map((each) => `${each.name} ${each.text}`).join(' · '))}${assumed === '' ? '' : escaped(`; defaults: ${assumed}`)}</p>`,
    `<table class="working"><caption>Working of ${name}</caption><thead><tr><th scope="col">step, and what went into it</th><th scope="col">value</th></tr></thead><tbody>`,
    ...rows,
    `<tr class="result"><th scope="row">${name}</th>${tag('td', result)}</tr>`,
    '</tbody></table>',
  ].join('\n');
}

function examplePart({ formula, answer, cautions, working }: WorkedExample): string {
  const single = answer.length === 1 && answer[0]!.length === 1;
  return [
    `<dt><code>${escaped(formula)}</code></dt>`,
    `<dd>${single ? tag('p', answer[0]![0]!, 'answer') : spill(answer, formula)}`,
    ...cautions.map((caution) => tag('p', `caution: ${caution}`, 'caution')),
    ...(working ? [workingPart(working)] : []),
    '</dd>',
  ].join('\n');
}

const fact = (term: string, text: string, className: string): string => (text === '' ? '' : `<dt>${term}</dt>${tag('dd', text, className)}`);

export const declarationPart = ({ functions, source, caution, tasks, examples }: HandbookDeclaration): string => [
  '<section>',
  ...functions.map(functionPart),
  `<dl class="facts">${fact('Source', source, 'source')}${fact('Caution', caution, 'standing')}${fact('Asked for as', tasks.join('; '), 'tasks')}</dl>`,
  ...(examples.length === 0 ? [] : ['<dl class="examples">', ...examples.map(examplePart), '</dl>']),
  '</section>',
].join('\n');
