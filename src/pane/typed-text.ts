/**
 * A text as one types it so that a spreadsheet program keeps it a text: with an apostrophe where it would become a number,
 * a date, a truth value, an error or a formula.
 */
export const asTypedText = (text: string): string => (/\d|^[\s=+\-@#']|^(?:true|false)$/i.test(text) ? `'${text}` : text);
