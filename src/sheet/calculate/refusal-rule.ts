import type { WorkbookFacts } from '../xlsx/workbook';

const DATES = /\b(DATE|DATEVALUE|DATEDIF|DAY|DAYS360|EDATE|EOMONTH|ISOWEEKNUM|MONTH|NETWORKDAYS|NETWORKDAYS\.INTL|NOW|TEXT|TODAY|VALUE|WEEKDAY|WEEKNUM|WORKDAY|WORKDAY\.INTL|YEAR|YEARFRAC)\s*\(/i;

/** The formulas of a workbook that would come out otherwise here than in the program which made it, each with the reason. */
export function refusalRule({ date1904, fullPrecision }: WorkbookFacts): (formula: string) => string | undefined {
  return (formula) => {
    if (!fullPrecision) return 'the workbook computes with the precision that its cells show, which is not done here';
    if (/^TABLE\(/.test(formula)) return 'a what-if table is computed in a spreadsheet program only';
    return date1904 && DATES.test(formula) ? 'the workbook counts days from 1904, functions of dates here count from 1900' : undefined;
  };
}
