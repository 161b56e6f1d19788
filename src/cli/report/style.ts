/** Look of the report: paper first. One font of the reader's own system, slate rules, colour only where a class is named. */
export const REPORT_STYLE = `
:root { --ink: #22313c; --quiet: #5b6770; --line: #b7c0c4; --shade: #f1f4f5; --a: #8a1c12; --b: #7a4e00; --c: #34495a; }
* { box-sizing: border-box; }
body { margin: 0 auto; padding: 10mm 12mm 14mm; max-width: 400mm; color: var(--ink); background: #fff; font: 10.5pt/1.45 Calibri, "Segoe UI", "Helvetica Neue", Arial, sans-serif; font-variant-numeric: tabular-nums; }
h1 { margin: 0 0 1mm; font-size: 19pt; font-weight: 600; letter-spacing: .01em; }
h2 { margin: 8mm 0 2mm; padding-bottom: 1mm; border-bottom: .5mm solid var(--ink); font-size: 13pt; font-weight: 600; }
h3 { margin: 5mm 0 1.5mm; font-size: 11pt; font-weight: 600; }
p { margin: 0 0 2mm; max-width: 62em; }
.lead { color: var(--quiet); }
table { width: 100%; border-collapse: collapse; margin: 0 0 3mm; font-size: 9.5pt; }
th, td { padding: 1.2mm 2mm; border: .2mm solid var(--line); text-align: left; vertical-align: top; overflow-wrap: anywhere; }
thead { display: table-header-group; }
th { background: var(--shade); font-weight: 600; }
tbody th { white-space: nowrap; width: 1%; background: none; font-weight: 600; }
tr { break-inside: avoid; }
.facts { break-inside: avoid; break-after: avoid; }
.number, td.number { text-align: right; white-space: nowrap; }
.where { white-space: nowrap; font-weight: 600; overflow-wrap: normal; }
.address { white-space: nowrap; }
.narrow { width: 1%; white-space: nowrap; }
.class { width: 1%; font-weight: 700; text-align: center; }
.A { color: var(--a); } .B { color: var(--b); } .C { color: var(--c); }
code { font: 8.8pt/1.35 Consolas, Menlo, "DejaVu Sans Mono", monospace; overflow-wrap: anywhere; }
.clause { color: var(--quiet); font-size: 8.8pt; }
.values { display: block; color: var(--quiet); }
.not { padding: 2mm 3mm; border-left: 1mm solid var(--b); background: #fbf6ea; max-width: none; }
.good { padding: 2mm 3mm; border-left: 1mm solid #4d7a3f; background: #f2f7ef; max-width: none; }
.findings { table-layout: fixed; }
.findings col.cell { width: 11%; } .findings col.kind { width: 12%; } .findings col.formula { width: 27%; } .findings col.source { width: 17%; }
.findings td { overflow-wrap: anywhere; white-space: normal; }
.summary td.number, .summary th.number { width: 1%; }
.sign td { height: 11mm; }
footer { margin-top: 8mm; padding-top: 2mm; border-top: .2mm solid var(--line); color: var(--quiet); font-size: 9pt; }
@page { margin: 12mm 10mm 14mm; }
@media print { body { padding: 0 .4mm; max-width: none; font-size: 9.5pt; } table { font-size: 8.6pt; } h2, h3 { break-after: avoid; } .not, .good, th { -webkit-print-color-adjust: exact; print-color-adjust: exact; } }
`;
