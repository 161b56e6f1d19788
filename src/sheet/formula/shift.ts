import { type Token, tokenize, translateTokensToA1, translateTokensToR1C1 } from '@borgar/fx/xlsx';
import { addressOf } from '../xlsx/address';

/** How every formula here is cut into tokens. */
export const TOKENS = { negativeNumbers: false, mergeRefs: true } as const;

/**
 * A formula that several cells share: its text for any of them, with relative references moved as far as the cell stands from
 * the one it was written for. At the edges of the sheet references go round, as spreadsheet programs let them.
 */
export class SharedFormula {
  private readonly tokens: Token[];

  constructor(readonly text: string, row: number, column: number) {
    this.tokens = translateTokensToR1C1(tokenize(`=${text}`, TOKENS), addressOf(row, column));
  }

  /** Whether it reads differently in other cells. */
  get isRelative(): boolean {
    return this.at(0, 0) !== this.at(1, 1);
  }

  at(row: number, column: number): string {
    return translateTokensToA1(this.tokens, addressOf(row, column)).map((token) => token.value).join('').slice(1);
  }
}

/** A formula as it reads when it is copied from one cell to another. */
export const shiftFormula = (text: string, from: { row: number; column: number }, to: { row: number; column: number }): string =>
  new SharedFormula(text, from.row, from.column).at(to.row, to.column);
