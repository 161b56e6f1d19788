import { type HandbookDeclaration, type HandbookFamily, type HandbookFunction, RULES, TITLE } from './content';

const escaped = (text: string): string => text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;').replace(/"/g, '&quot;');
const tag = (name: string, text: string): string => `<${name}>${escaped(text)}</${name}>`;

function argumentTable({ arguments: list }: HandbookFunction): string {
  if (typeof list === 'string') return `<p>Arguments as <a href="#${list}">${list}</a>.</p>`;
  if (list.length === 0) return '<p>Takes no arguments.</p>';
  const rows = list.map(({ name, about, takes, leftOut }) => `<tr><th scope="row">${escaped(name)}</th>${tag('td', about)}${tag('td', takes)}${tag('td', leftOut === '' ? 'needed' : leftOut)}</tr>`);
  return `<table><thead><tr><th scope="col">argument</th><th scope="col">what</th><th scope="col">takes</th><th scope="col">left out</th></tr></thead><tbody>\n${rows.join('\n')}\n</tbody></table>`;
}

const functionPart = (each: HandbookFunction): string => [
  `<h3 id="${each.name}">${each.name}</h3>`,
  tag('p', each.summary),
  `<p><code>${escaped(each.signature)}</code> gives ${escaped(each.gives)}.</p>`,
  ...(each.formula === '' ? [] : [`<p>Formula: ${escaped(each.formula)}</p>`]),
  argumentTable(each),
].join('\n');

const declarationPart = ({ functions, source, caution, examples }: HandbookDeclaration): string => [
  '<section>',
  ...functions.map(functionPart),
  `<dl><dt>Source</dt>${tag('dd', source)}${caution === '' ? '' : `<dt>Caution</dt>${tag('dd', caution)}`}</dl>`,
  ...(examples.length === 0 ? [] : [`<pre>${examples.map(({ formula, answer }) => escaped(answer.includes('\n') ? `${formula}\n${answer.replace(/^/gm, '  ')}` : `${formula}  →  ${answer}`)).join('\n')}</pre>`]),
  '</section>',
].join('\n');

const contents = (families: readonly HandbookFamily[]): string =>
  families.map(({ title, declarations }) => `<p><b>${escaped(title)}</b><br>\n${declarations.flatMap(({ functions }) => functions).map(({ name }) => `<a href="#${name}">${name}</a>`).join('\n')}</p>`).join('\n');

/** The handbook as a page of its own, where Excel's help leads to: each function has its name as anchor. */
export const handbookPage = (families: readonly HandbookFamily[]): string => `<!doctype html>
<!-- Generated from the declarations in src/functions by \`npm run generate\`; do not edit. -->
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'self'; img-src 'self'; base-uri 'none'; form-action 'none'">
<title>Joulewright: ${TITLE.toLowerCase()}</title>
<link rel="icon" href="assets/icon-16.png">
<link rel="stylesheet" href="handbook.css">
</head>
<body>
<main>
<h1>${TITLE}</h1>
<ul>
${RULES.map((rule) => tag('li', rule)).join('\n')}
</ul>
<nav aria-label="Functions">
${contents(families)}
</nav>
${families.map(({ title, declarations }) => `<h2>${escaped(title)}</h2>\n${declarations.map(declarationPart).join('\n')}`).join('\n')}
</main>
</body>
</html>
`;
