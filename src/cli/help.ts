import { version } from '../core/version';

const CAUTION = 'A calculation aid, not a design approval: local codes, the maker’s current data and a licensed engineer decide.';

export const mainHelp = `Joulewright ${version}: low-voltage protection functions for spreadsheets.

  joulewright evaluate [--json] FORMULA …        values of formulas
  joulewright check FILE …                       what disagrees in workbooks, and why
  joulewright compare OLD.xlsx NEW.xlsx          what changed, for the revision block
  joulewright recompute IN.xlsx -o OUT.xlsx      a workbook with its stored values made new
  joulewright table FILE.xlsx [TABLE [COLUMN …]] a table of a workbook, as it is stored
  joulewright functions [NAME]                   the functions, or all about one
  joulewright functions --find WORDS …           functions for a question
  joulewright --version

joulewright COMMAND --help tells more of each.
Exit status: 0 done, 1 something disagrees or fails, 2 could not run. Messages go to standard error.
${CAUTION}`;

export const helpOf: Readonly<Record<string, string>> = {
  evaluate: `joulewright evaluate [--json] FORMULA …

Evaluates each formula and prints one value a line, or #CODE! and the reason.
Without FORMULA, formulas are read from standard input, one a line.
Spreadsheet functions work beside ours. Ranges are written as inline arrays: {1,2;3,4}.

  joulewright evaluate '=JW.CABLE_K("Cu","XLPE")'
  joulewright evaluate '=JW.CABLE_WITHSTAND(115,25)' '=ROUND(JW.FAULT_3PH_MAX("2.31+7.9i",415),1)'

  --json   an array of {formula, value} or {formula, error, message}
Exit status: 1 if any formula gives an error, 2 if there was none to evaluate.`,
  check: `joulewright check FILE … [--tolerance 0.1%] [--list] [--json | --sarif] [--html REPORT.html]

Works each formula of a workbook out from the stored values of the cells it reads, computes the whole workbook anew, and
looks for what a checker looks for. Findings are of class A (safety), B (must be corrected) or C (remark). FILE may be a
folder, which stands for all workbooks below it, or a pattern with * ? **. Workbooks are only read.

  --tolerance T   greatest difference of figures that counts as agreement: 0.1% or 0.001 (otherwise 1 part in 10⁹)
  --list          names every value that changes when the workbook is computed anew
  --json          findings as data (docs/check-findings.schema.json)
  --sarif         findings in SARIF 2.1.0
  --html FILE     also writes the record of the check as a page for print

Exit status: 0 no finding of class A or B, 1 findings, 2 something could not be read. What could not be checked is counted
and is a finding of its own.`,
  compare: `joulewright compare OLD.xlsx NEW.xlsx [--tolerance 0.1%] [--json]

Tells what changed from one state of a workbook to the next: inputs, formulas, and results of formulas that stayed; sheets,
rows, columns of tables, and names that came or went. Rows of a table are told by their first cell, other rows by the texts
in them, so that a row put in between is one change and not many. Stored values are compared; nothing is computed.

  --tolerance T   greatest difference of figures that counts as no change: 0.1% or 0.001 (otherwise 1 part in 10⁹)
  --json          the same as data
Exit status: 0 no change, 1 changes, 2 could not run.`,
  recompute: `joulewright recompute IN.xlsx -o OUT.xlsx [--dry-run] [--list] [--json]

Recomputes every formula of a workbook and writes a copy in which only stored values that differ are new; every other
byte stays. Macros are kept and never run, external links are kept and never followed.

  -o, --output FILE   where the copy goes; written whole or not at all
  --dry-run           tells what would change and writes nothing
  --list              names every changed cell
  --json              the same as data
Exit status: 0 done, 1 some formulas could not be computed (they keep their stored values), 2 could not run.`,
  table: `joulewright table FILE.xlsx [TABLE [COLUMN …]]

Prints a table of a workbook from its stored values; without TABLE, the names of the tables and their columns.`,
  functions: `joulewright functions [NAME | --find WORDS …]

Lists the functions by family, or tells all about one: arguments with units and bounds, formula, source, caution.

  --find   functions for a question in trade words, the best first: --find will the cable stand it`,
};
