import { type Token, tokenize } from '@borgar/fx/xlsx';
import { TOKENS } from '../../sheet/formula/shift';

/** A stretch of a formula's text. References to cells are kept apart, for the grid moves them when a formula is copied. */
export interface Piece {
  readonly text: string;
  readonly isReference: boolean;
}

const isReference = ({ type, value }: Token): boolean => (type === 'range' || type === 'range_beam') && !value.startsWith('[') && !value.startsWith("'[");

const upperAddress = (text: string): string => {
  const cut = text.lastIndexOf('!') + 1;
  return text.slice(0, cut) + text.slice(cut).toUpperCase();
};

const written = (token: Token): string => {
  if (token.type === 'func') return token.value.toUpperCase();
  return isReference(token) ? upperAddress(token.value) : token.value;
};

/** The text of a formula, `=` included, in pieces; names of functions and addresses in capitals, as Excel writes them. */
export function formulaPieces(formula: string): Piece[] {
  return tokenize(formula, TOKENS).map((token) => ({ text: written(token), isReference: isReference(token) }));
}

export const textOf = (pieces: readonly Piece[]): string => pieces.map(({ text }) => text).join('');
