/** Number formats of a workbook in the form that the grid takes. */

const BUILT_IN: Readonly<Record<number, string>> = {
  1: '0', 2: '0.00', 3: '#,##0', 4: '#,##0.00', 9: '0%', 10: '0.00%', 11: '0.00e', 12: '# ?/?', 13: '# ??/??',
  14: 'm/d/yyyy', 15: 'd-mmm-yy', 16: 'd-mmm', 17: 'mmm-yy', 18: 'h:mm a', 19: 'h:mm:ss a', 20: 'hh:mm', 21: 'hh:mm:ss', 22: 'm/d/yyyy hh:mm',
  37: '#,##0;(#,##0)', 38: '#,##0;(#,##0)', 39: '#,##0.00;(#,##0.00)', 40: '#,##0.00;(#,##0.00)',
  45: 'mm:ss', 46: 'hhhh:mm:ss', 47: 'mm:ss', 48: '0.0e', 49: '@',
};

/** Takes out what is for paper only: colours, languages, padding, fill characters. */
function simplified(code: string): string {
  return code
    .replace(/\[\$([^\]-]*)(?:-[^\]]*)?\]/g, (_, symbol: string) => (symbol === '' ? '' : `"${symbol}"`))
    .replace(/\[(?:black|blue|cyan|green|magenta|red|white|yellow|color ?\d+)\]/gi, '')
    .replace(/_./g, '')
    .replace(/\*./g, '')
    .replace(/0(\.0+)?E\+0+/g, (_, decimals: string | undefined) => `0${decimals ?? ''}e`)
    .replace(/AM\/PM|A\/P/gi, 'a');
}

/** Whether the grid can show numbers in a format. */
export type FormatCheck = (format: string) => boolean;

/** The format for the grid; undefined for the general one and for those that the grid cannot show. */
export function gridFormat(id: number, code: string | undefined, isShown: FormatCheck): string | undefined {
  const text = code ?? BUILT_IN[id];
  if (text === undefined || /^general$/i.test(text)) return undefined;
  const format = code === undefined ? text : simplified(text);
  return format !== '' && isShown(format) ? format : undefined;
}
