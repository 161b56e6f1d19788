import { EDITION, type HandbookFamily, RULES, TITLE } from './content';
import { escaped, tag } from './html';
import { declarationPart } from './page-entry';

const anchor = ({ id }: HandbookFamily): string => `family-${id}`;

const contents = (families: readonly HandbookFamily[]): string => families.map((family) => [
  '<div>',
  `<a class="family" href="#${anchor(family)}">${escaped(family.title)}</a>`,
  '<ul>',
  ...family.declarations.flatMap(({ functions }) => functions).map(({ name }) => `<li><a href="#${name}">${name}</a></li>`),
  '</ul>',
  '</div>',
].join('\n')).join('\n');

const familyPart = (family: HandbookFamily): string => [
  '<div class="part">',
  `<h2 id="${anchor(family)}">${escaped(family.title)}</h2>`,
  ...family.declarations.map(declarationPart),
  '</div>',
].join('\n');

/**
 * The handbook as a page of its own, where Excel's help, the pane and the workbench lead to: each function has its name
 * as anchor. It reads whole without its script, which only adds the search.
 */
export const handbookPage = (families: readonly HandbookFamily[]): string => `<!doctype html>
<!-- Generated from the declarations in src/functions by \`npm run generate\`; do not edit. -->
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; base-uri 'none'; form-action 'none'">
<title>Joulewright: ${TITLE.toLowerCase()}</title>
<link rel="icon" href="assets/icon-16.png">
<link rel="stylesheet" href="handbook.css">
<script defer src="handbook.js"></script>
</head>
<body>
<header>
<h1>${TITLE}</h1>
<p class="edition">${escaped(EDITION)}. Figures of the examples are rounded to 7 digits, of their steps to 6.</p>
</header>
<div class="columns">
<div class="aside">
<search id="search" hidden>
<label for="query">Find a function</label>
<input id="query" type="search" autocomplete="off" spellcheck="false" aria-describedby="found" aria-keyshortcuts="/">
<p id="found" role="status"></p>
</search>
<details id="contents" open>
<summary>Contents</summary>
<nav aria-label="Functions by family">
${contents(families)}
</nav>
</details>
</div>
<main>
<ul class="rules">
${RULES.map((rule) => tag('li', rule)).join('\n')}
</ul>
${families.map(familyPart).join('\n')}
</main>
</div>
</body>
</html>
`;
