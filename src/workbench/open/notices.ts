import { counted } from '../../core/figure';
import type { OpenWorkbook } from '../../sheet/xlsx/workbook';
import type { ImportedWorkbook } from './workbook-data';

function chartCount({ package: parts }: OpenWorkbook): number {
  return parts.parts.filter((name) => /^xl\/charts\/chart[^/]*\.xml$/i.test(name)).length;
}

/** What the reader of a file ought to know before trusting or changing it here. */
export function noticesOf(workbook: OpenWorkbook, { rulesNotDrawn, rulesNotChecked }: ImportedWorkbook): string[] {
  const { facts } = workbook;
  const charts = chartCount(workbook);
  const otherSheets = facts.sheets.filter(({ kind }) => kind !== 'worksheet').length;
  const said: (string | false)[] = [
    facts.macros && 'The file holds macros. They are kept in it and never run here.',
    facts.externalLinks > 0 && `The file refers to ${counted(facts.externalLinks, 'other workbook')}. Formulas that read from there are not worked out here; their stored values stand.`,
    facts.signed && 'The file is signed. Saving a change makes the signature void.',
    facts.date1904 && 'The file counts days from 1904: dates are shown here four years and a day early.',
    !facts.fullPrecision && 'The file computes with the digits that its cells show, which is not done here; its stored values stand.',
    facts.iterative && 'The file iterates circular references, which is not done here; their stored values stand.',
    facts.calculation === 'manual' && 'The file is set to be calculated by hand; here every change is calculated at once.',
    charts > 0 && `${counted(charts, 'chart')} ${charts === 1 ? 'is' : 'are'} kept in the file and not drawn here.`,
    otherSheets > 0 && `${counted(otherSheets, 'sheet')} without cells (charts, dialogs) ${otherSheets === 1 ? 'is' : 'are'} kept in the file and not shown here.`,
    rulesNotDrawn > 0 && `${counted(rulesNotDrawn, 'conditional format')} (icons, averages) ${rulesNotDrawn === 1 ? 'is' : 'are'} kept and not drawn here.`,
    rulesNotChecked > 0 && `${counted(rulesNotChecked, 'input rule')} ${rulesNotChecked === 1 ? 'is' : 'are'} kept and not checked here.`,
  ];
  return said.filter((words) => words !== false);
}
