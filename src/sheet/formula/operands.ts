import type { Token } from '@borgar/fx/xlsx';

export const isOperator = (token: Token | undefined, value: string): boolean => token?.type === 'operator' && token.value === value;

const isSpace = (token: Token | undefined): boolean => token?.type === 'whitespace' || token?.type === 'newline';

/** Place of the bracket that closes the one at `open`. */
export function closingBracket(tokens: readonly Token[], open: number): number {
  let depth = 0;
  for (let at = open; at < tokens.length; at++) {
    if (isOperator(tokens[at], '(')) depth++;
    if (isOperator(tokens[at], ')') && --depth === 0) return at;
  }
  return tokens.length - 1;
}

/** Last token of the operand that begins at `from`: a reference, a call or brackets, with the rest of a range behind it. */
export function operandEnd(tokens: readonly Token[], from: number): number {
  let at = from;
  while (isSpace(tokens[at]) || isOperator(tokens[at], '@')) at++;
  if (tokens[at]?.type === 'func' && isOperator(tokens[at + 1], '(')) at++;
  if (isOperator(tokens[at], '(')) at = closingBracket(tokens, at);
  return isOperator(tokens[at + 1], ':') ? operandEnd(tokens, at + 2) : at;
}

/** First token of the operand that ends at `to`: a reference, a call or brackets. */
export function operandStart(tokens: readonly Token[], to: number): number {
  if (!isOperator(tokens[to], ')')) return to;
  let depth = 0;
  for (let at = to; at >= 0; at--) {
    if (isOperator(tokens[at], ')')) depth++;
    if (isOperator(tokens[at], '(') && --depth === 0) return tokens[at - 1]?.type === 'func' ? at - 1 : at;
  }
  return 0;
}
