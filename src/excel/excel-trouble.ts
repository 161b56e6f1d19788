import { type Refused, refused } from '../pane/host';

/** What Excel refuses, in words. */

const WORDS: Readonly<Record<string, string>> = {
  InvalidOperationInCellEditMode: 'A cell is being edited. Press Enter or Esc, then try again.',
  AccessDenied: 'Excel does not allow it: the sheet or workbook is protected or open for reading only.',
  ItemNotFound: 'The sheet is no longer there.',
  ItemAlreadyExists: 'Something of that name is there already.',
  ApiNotFound: 'This version of Excel does not know how to do that.',
  UnsupportedOperation: 'Excel cannot do that with these cells.',
};

export const codeOf = (error: unknown): string => (typeof error === 'object' && error !== null && 'code' in error ? String(error.code) : '');

export const troubleOf = (error: unknown): Refused => {
  const code = codeOf(error);
  return refused(WORDS[code] ?? `Excel did not do it${code === '' ? '' : ` (${code})`}.`);
};

export const isKnown = (set: string): boolean => Office.context.requirements.isSetSupported('ExcelApi', set);
