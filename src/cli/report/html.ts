import { version, versionDate } from '../../core/version';
import { CLASS_WORDS, FINDING_CLASSES, allRules } from '../../sheet/check';
import { rounded } from '../../core/figure';
import { type CheckedFile, countOf } from '../checked-file';
import { shownCell, shownDifference } from './cell';
import { Markup, NOTHING, markup } from './escape';
import { type FindingGroup, grouped } from './groups';
import { REPORT_STYLE } from './style';

export interface ReportFacts {
  readonly tolerance: number;
  readonly at: Date;
}

const CAUTION = 'A calculation aid, not a design approval: local codes, the maker’s current data and a licensed engineer decide.';
/** Longest list of single changes that is printed; the number of the rest is said. */
const MOST_CHANGES = 500;

/** The record of a check as one page that needs nothing else. */
export function htmlReport(files: readonly CheckedFile[], facts: ReportFacts): string {
  const page = markup`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'">
<title>Record of a workbook check</title>
<style>${new Markup(REPORT_STYLE)}</style>
</head>
<body>
<h1>Record of a workbook check</h1>
<p class="lead">Made by Joulewright ${version} of ${versionDate} on ${stamp(facts.at)}. Nothing in the workbooks was changed.</p>
${summary(files)}
${files.map(fileSection)}
${howChecked(facts)}
${signatures()}
<footer>${CAUTION}</footer>
</body>
</html>
`;
  return page.text;
}

const pad = (n: number): string => String(n).padStart(2, '0');
const stamp = (at: Date): string => `${at.getFullYear()}-${pad(at.getMonth() + 1)}-${pad(at.getDate())} ${pad(at.getHours())}:${pad(at.getMinutes())}`;

function summary(files: readonly CheckedFile[]): Markup {
  const rows = files.map((file) => (file.error === undefined
    ? markup`<tr><td>${file.file}</td><td class="number">${file.formulas}</td><td class="number">${file.checked}</td><td class="number">${file.notChecked}</td>${FINDING_CLASSES.map((each) => markup`<td class="number ${countOf([file], each) ? each : ''}">${countOf([file], each)}</td>`)}</tr>`
    : markup`<tr><td>${file.file}</td><td colspan="6" class="B">not checked: ${file.error}</td></tr>`));
  return markup`<h2>Summary</h2>
<table class="summary">
<thead><tr><th>Workbook</th><th class="number">Formulas</th><th class="number">Checked</th><th class="number">Not checked</th>${FINDING_CLASSES.map((each) => markup`<th class="number">${each}: ${CLASS_WORDS[each]}</th>`)}</tr></thead>
<tbody>${rows}</tbody>
</table>`;
}

function fileSection(file: CheckedFile): Markup {
  if (file.error !== undefined) return markup`<section class="file"><h2>${file.file}</h2><p class="not">This file was not checked: ${file.error}</p></section>`;
  return markup`<section class="file">
<h2>${file.file}</h2>
<table class="facts"><tbody>
<tr><th>Sheets</th><td>${file.sheets.join(', ')}</td></tr>
<tr><th>SHA-256 of the file</th><td><code>${file.sha256 ?? ''}</code></td></tr>
${file.notices.map((notice) => markup`<tr><th>Note</th><td>The workbook ${notice}.</td></tr>`)}
</tbody></table>
${verdictOfFile(file)}
${FINDING_CLASSES.map((of) => findingTable(of, grouped(file.findings.filter((finding) => finding.class === of))))}
${changesOf(file)}
</section>`;
}

/** What may be said of the file as a whole: never more than was checked. */
function verdictOfFile({ formulas, checked, notChecked, findings }: CheckedFile): Markup {
  if (formulas === 0) return markup`<p class="not">The workbook holds no formula: there was nothing to compute.</p>`;
  if (notChecked > 0) return markup`<p class="not">${notChecked} of ${formulas} formulas could not be checked; each is named below with its reason. Nothing is said of their values: check them by hand.</p>`;
  const words = findings.length === 0 ? 'No rule found anything.' : '';
  return markup`<p class="good">All ${checked} formulas were worked out and held against their stored values. ${words}</p>`;
}

function findingTable(of: 'A' | 'B' | 'C', groups: readonly FindingGroup[]): Markup {
  if (groups.length === 0) return NOTHING;
  return markup`<h3><span class="${of}">${of}: ${CLASS_WORDS[of]}</span></h3>
<table class="findings">
<colgroup><col class="cell"><col class="kind"><col><col class="formula"><col class="source"></colgroup>
<thead><tr><th>Cell</th><th>Kind</th><th>What was found</th><th>Formula</th><th>Clause</th></tr></thead>
<tbody>${groups.map(findingRow)}</tbody>
</table>`;
}

function findingRow({ first, members, cells }: FindingGroup): Markup {
  // A long name of a sheet may go on in the next line, an address not.
  const where = first.sheet === '' ? 'workbook' : cells === '' ? first.sheet : markup`${first.sheet}!<wbr><span class="address">${cells}</span>`;
  const values = members.filter(({ computed, formula, stored }) => computed !== null || (formula === null && stored !== null)).map(({ cell, stored, computed, difference }) => {
    const name = members.length > 1 ? `${cell}: ` : '';
    const apart = shownDifference(difference);
    return markup`<span class="values">${name}stored ${shownCell(stored)}${computed === null ? '' : `, computed ${shownCell(computed)}${apart === '' ? '' : ` (${apart})`}`}</span>`;
  });
  return markup`<tr><td class="where">${where}</td><td>${first.kind}</td><td>${first.reason}${values}</td><td>${first.formula === null ? '' : markup`<code>${first.formula}</code>`}</td><td class="clause">${first.clause}</td></tr>
`;
}

function changesOf({ changes, formulas, notRecomputed }: CheckedFile): Markup {
  if (formulas === 0) return NOTHING;
  const left = notRecomputed === 0 ? NOTHING : markup`<p class="not">${notRecomputed} of ${formulas} formulas could not be computed anew, or hang on one that could not. Nothing is said of what they would give.</p>`;
  if (changes.length === 0) return markup`<h3>Computed anew as a whole</h3>${left}<p>${notRecomputed === 0 ? 'No stored value changes.' : notRecomputed < formulas ? 'No stored value of the others changes.' : ''}</p>`;
  const rest = changes.length - MOST_CHANGES;
  return markup`<h3>Computed anew as a whole</h3>
${left}<p>${changes.length} stored value${changes.length === 1 ? '' : 's'} would change. A value that changes here and stands in no finding above follows from one that does.</p>
<table>
<thead><tr><th class="narrow">Cell</th><th>Stored</th><th>Computed anew</th></tr></thead>
<tbody>${changes.slice(0, MOST_CHANGES).map(({ sheet, cell, stored, computed }) => markup`<tr><td class="where">${sheet}!${cell}</td><td>${shownCell(stored)}</td><td>${shownCell(computed)}</td></tr>
`)}</tbody>
</table>${rest > 0 ? markup`<p>${rest} more are not printed; the data of the check (--json) holds all.</p>` : ''}`;
}

const howChecked = ({ tolerance }: ReportFacts): Markup => markup`<h2>How it was checked</h2>
<p>Each formula was worked out from the stored values of the cells it reads, so that a difference shows in the cell where it arose and only there; then each workbook was computed anew from its constants. Figures agree where they differ by no more than ${tolerance < 1e-6 ? '1 part in 10⁹' : `${rounded(100 * tolerance)} %`} of the computed value. A formula that could not be worked out is counted as not checked and never as in agreement. Macros were not run and other workbooks not opened. What is typed into a sheet (lengths, sizes, ratings, the maker’s figures) was not compared with its sources.</p>
<table>
<thead><tr><th class="narrow">Rule</th><th class="narrow">Class</th><th>What it looks for</th></tr></thead>
<tbody>${allRules.map(({ kind, class: of, looksFor }) => markup`<tr><td class="narrow">${kind}</td><td class="class ${of}">${of}</td><td>${looksFor}</td></tr>
`)}</tbody>
</table>
<p>Clauses marked “from memory” were not read in the document when the function was written.</p>`;

const signatures = (): Markup => markup`<h2>Closing</h2>
<table class="sign">
<thead><tr><th>Checked by</th><th>Date</th><th>Findings answered by</th><th>Date</th><th>Closed</th></tr></thead>
<tbody><tr><td></td><td></td><td></td><td></td><td></td></tr></tbody>
</table>`;
