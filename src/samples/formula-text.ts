import { NAMESPACE } from '../functions/kernel/catalogue';

const ROW_CELL = /(?<![\w\]])\[@(?:\[([^\]]+)\]|([^\]\s]+))\]/g;
const STORED_WITH_PREFIX = /\b(XLOOKUP|TEXTJOIN|IFNA|IFS|MAXIFS|MINIFS)\(/g;

/** A formula as people type it, in the form in which workbook files store it. `[@size]` is the row's cell of the table. */
export const fileFormula = (typed: string, table: string): string =>
  typed
    .replace(ROW_CELL, (_, spaced: string | undefined, plain: string | undefined) => `${table}[[#This Row],[${spaced ?? plain}]]`)
    .replace(new RegExp(`\\b${NAMESPACE}\\.([A-Z0-9_]+)\\(`, 'g'), `_xldudf_${NAMESPACE}_$1(`)
    .replace(STORED_WITH_PREFIX, '_xlfn.$1(');

/** A text, or the word none: a cell that holds empty text looks forgotten, and some programs work it out anew at opening. */
export const orNone = (text: string): string => `IF(${text}="","none",${text})`;
