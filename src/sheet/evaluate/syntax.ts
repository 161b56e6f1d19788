import { type AstExpression, type Token, parse, tokenize } from '@borgar/fx/xlsx';
import { isStackOverflow } from '../../core/stack';
import { LIMITS } from './limits';

/** A formula that cannot be read, or says something this evaluator does not take. The message is for the reader of a cell. */
export class FormulaSyntaxError extends Error {
  override readonly name = 'FormulaSyntaxError';
}

const PREFIX = /^(?:_xlfn\.|_xlws\.|_xlpm\.)+/i;
/** Files mark optional parameters of a LAMBDA so. */
export const OPTIONAL_PARAMETER = /^_xlop\./i;

const isNamed = (token: Token): boolean => token.type === 'func' || token.type === 'range_named';
const isSpace = (token: Token): boolean => token.type === 'whitespace' || token.type === 'newline';
/** One of some operators, all of one character. */
const isOperator = (token: Token | undefined, signs: string): boolean => token?.type === 'operator' && signs.includes(token.value);
const isReferenceToken = (token: Token): boolean =>
  token.type.startsWith('range') || token.type === 'structured' || (token.type === 'error' && token.value.toUpperCase() === '#REF!');
const CONSTANTS = new Set(['number', 'string', 'bool', 'boolean', 'error']);
const isConstant = (token: Token): boolean => CONSTANTS.has(token.type);

/** The parser joins neighbours without a comma or operator ("SUM(1 2)") silently; only references may stand side by side. */
function refuseMissingOperator(before: Token | undefined, token: Token): void {
  if (!before) return;
  const endsReference = isReferenceToken(before) || isOperator(before, ')#');
  const endsOperand = endsReference || isConstant(before) || isOperator(before, '}%');
  const startsReference = isReferenceToken(token) || token.type === 'func' || isOperator(token, '(');
  const startsOperand = startsReference || isConstant(token) || isOperator(token, '{');
  if (endsOperand && startsOperand && !(endsReference && startsReference)) {
    throw new FormulaSyntaxError(`a comma or an operator is missing before ${token.value}`);
  }
}

/** `Sheet1!#REF!` is `#REF!`, and the sign of a number inside braces belongs to the number. */
function joined(tokens: Token[], at: number, inBraces: boolean): { token: Token; length: number } | undefined {
  const token = tokens[at]!;
  const next = tokens[at + 1];
  if (token.type.startsWith('context') && isOperator(next, '!') && tokens[at + 2]?.type === 'error') return { token: tokens[at + 2]!, length: 3 };
  const isSign = inBraces && isOperator(token, '-+') && next?.type === 'number' && isOperator(tokens[at - 1], '{,;');
  return isSign ? { token: { ...next, value: token.value === '-' ? `-${next.value}` : next.value }, length: 2 } : undefined;
}

function prepared(raw: Token[]): Token[] {
  const result: Token[] = [];
  const tokens = raw.filter((token, index) => !(isSpace(token) && (index === 0 || isOperator(raw[index - 1], '{,;'))));
  let depth = 0;
  let signs = 0;
  let braces = 0;
  let before: Token | undefined;
  for (let at = 0; at < tokens.length; at++) {
    const join = joined(tokens, at, braces > 0);
    let token = join?.token ?? tokens[at]!;
    if (join) at += join.length - 1;
    if (isNamed(token)) token = { ...token, value: token.value.replace(PREFIX, '') };
    if (isOperator(token, '({')) depth++;
    if (isOperator(token, ')}')) depth--;
    if (isOperator(token, '{')) braces++;
    if (isOperator(token, '}')) braces--;
    signs = isOperator(token, '-+@') ? signs + 1 : 0;
    if (depth > LIMITS.nesting || signs > LIMITS.nesting) throw new FormulaSyntaxError(`it nests more than ${LIMITS.nesting} deep`);
    if (!isSpace(token)) {
      refuseMissingOperator(before, token);
      before = token;
    }
    result.push(token);
  }
  return result;
}

/** The formula (without its leading =) as a tree; throws FormulaSyntaxError. */
export function syntaxTree(formula: string): AstExpression {
  if (formula.length > LIMITS.formulaLength) {
    throw new FormulaSyntaxError(`it has ${formula.length} characters, Excel takes ${LIMITS.formulaLength}`);
  }
  if (formula.trim() === '') throw new FormulaSyntaxError('it is empty');
  const tokens = prepared(tokenize(`=${formula}`, { negativeNumbers: false, mergeRefs: true, withLocation: false }));
  const unknown = tokens.find((token) => token.type === 'unknown');
  if (unknown) throw new FormulaSyntaxError(`"${unknown.value}" is not understood`);
  if (tokens.some((token) => token.unterminated)) throw new FormulaSyntaxError('a quote is not closed');
  try {
    return parse(tokens);
  } catch (cause) {
    throw new FormulaSyntaxError(inWords(cause), { cause });
  }
}

function inWords(cause: unknown): string {
  if (isStackOverflow(cause)) return 'it nests too deep';
  const message = cause instanceof Error ? cause.message : String(cause);
  if (message === 'Invalid syntax') return 'something is missing or stands in the wrong place';
  return message.replace('(END)', 'the end').replace(/^[A-Z](?=[a-z])/, (first) => first.toLowerCase());
}
