import { tokenize } from '@borgar/fx/xlsx';
import type { Kind, WordList } from '../../functions/kernel/kind';
import { FormulaSyntaxError, syntaxTree } from '../../sheet/evaluate/syntax';

/**
 * What is typed into a field, as an argument of a formula. A formula or reference may always begin with =; without it,
 * numbers are numbers, words of the argument are words, addresses and names are references wherever a text is not what
 * is asked for, and everything else is a text and gets its quotes.
 */

export interface FieldReading {
  /** The argument as the formula holds it; '' where the field is blank. */
  readonly argument: string;
  /** Why it cannot be put into a formula. */
  readonly fault?: string;
}

/** Whether a name means something in the workbook. */
export type IsName = (name: string) => boolean;

const NUMBER = /^[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:e[+-]?\d+)?$/i;
const FLAGS: ReadonlyMap<string, string> = new Map([['true', 'TRUE'], ['yes', 'TRUE'], ['false', 'FALSE'], ['no', 'FALSE']]);

export const quoted = (text: string): string => `"${text.replace(/"/g, '""')}"`;

const isWord = (words: WordList, text: string): boolean =>
  Object.entries(words).some(([word, synonyms]) => [word, ...synonyms].some((each) => each.toLowerCase() === text.toLowerCase()));

/** The type of a text that is one token and nothing else. */
function tokenType(text: string): string {
  const tokens = tokenize(`=${text}`, { negativeNumbers: false, mergeRefs: true }).slice(1);
  return tokens.length === 1 ? tokens[0]!.type : '';
}

function isReference(text: string, isName: IsName): boolean {
  const type = tokenType(text);
  if (type === 'range_named') return isName(text);
  return type.startsWith('range') || type === 'structured';
}

/** Formulas are tried as an argument, where a comma would make two of them. */
function expression(text: string): FieldReading {
  if (text === '') return { argument: '', fault: 'nothing stands behind the =' };
  try {
    syntaxTree(text);
    const tree = syntaxTree(`F(${text})`);
    if (tree.type === 'CallExpression' && tree.arguments.length !== 1) return { argument: text, fault: 'a comma parts arguments; this field takes one' };
    return { argument: text };
  } catch (thrown) {
    if (thrown instanceof FormulaSyntaxError) return { argument: text, fault: `cannot be read as a formula: ${thrown.message}` };
    throw thrown;
  }
}

export function readField(typed: string, { type, words }: Pick<Kind<unknown>, 'type' | 'words'>, isName: IsName): FieldReading {
  const text = typed.trim();
  if (text === '') return { argument: '' };
  if (text.startsWith('=')) return expression(text.slice(1).trim());
  if (words && isWord(words, text)) return { argument: quoted(text) };
  if (type === 'text') return { argument: NUMBER.test(text) ? text.toUpperCase() : quoted(text) };
  if (NUMBER.test(text)) return { argument: text.toUpperCase().replace(/^\+/, '') };
  const flag = FLAGS.get(text.toLowerCase());
  if (flag !== undefined && (type === 'flag' || /^(?:true|false)$/i.test(text))) return { argument: flag };
  if (/^\{.*\}$/s.test(text)) return expression(text);
  if (isReference(text, isName)) return { argument: text };
  return { argument: quoted(text) };
}

/** What to type into a field for an argument as a formula holds it. */
export function fieldText(argument: string, kind: Pick<Kind<unknown>, 'type' | 'words'>, isName: IsName): string {
  const given = argument.trim();
  if (given === '') return '';
  const literal = /^"(?:[^"]|"")*"$/.test(given) ? given.slice(1, -1).replace(/""/g, '"') : given;
  const plain = readField(literal, kind, isName);
  return plain.argument === given && !literal.startsWith('=') && literal.trim() === literal ? literal : `=${given}`;
}
