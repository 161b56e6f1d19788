import type { Cell } from '../../../functions/kernel/cell';
import { compareNumbers } from '../compare';
import { isError } from '../errors';
import { numberInText } from '../number-text';
import { Wildcard, hasWildcards } from '../wildcards';

type Test = (cell: Cell) => boolean;

const FORM = /^(<=|>=|<>|=|<|>)?([\s\S]*)$/;

const ORDER: Readonly<Record<string, (side: number) => boolean>> = {
  '<': (side) => side < 0,
  '<=': (side) => side <= 0,
  '>': (side) => side > 0,
  '>=': (side) => side >= 0,
};

/** A number, or a text that reads as one, equals a number asked for. */
const equalsNumber = (wanted: number): Test => (cell) => {
  if (typeof cell === 'number') return compareNumbers(cell, wanted) === 0;
  const read = typeof cell === 'string' ? numberInText(cell) : undefined;
  return read !== undefined && compareNumbers(read, wanted) === 0;
};

function equalsText(text: string): Test {
  const number = numberInText(text);
  if (number !== undefined) return equalsNumber(number);
  const upper = text.toUpperCase();
  if (upper === 'TRUE' || upper === 'FALSE') return (cell) => cell === (upper === 'TRUE');
  if (upper.startsWith('#')) {
    return (cell) => (isError(cell) ? cell.code === upper : typeof cell === 'string' && cell.toUpperCase() === upper);
  }
  if (!hasWildcards(text)) {
    const wanted = text.toLowerCase();
    return (cell) => typeof cell === 'string' && cell.toLowerCase() === wanted;
  }
  const pattern = new Wildcard(text);
  return (cell) => typeof cell === 'string' && pattern.matches(cell);
}

function ordered(operator: string, text: string): Test {
  const isMet = ORDER[operator]!;
  const number = numberInText(text);
  if (number !== undefined) return (cell) => typeof cell === 'number' && isMet(compareNumbers(cell, number));
  const wanted = text.toLowerCase();
  return (cell) => {
    if (typeof cell !== 'string') return false;
    const lower = cell.toLowerCase();
    return isMet(lower < wanted ? -1 : lower > wanted ? 1 : 0);
  };
}

/** The test that a criterion of COUNTIF, SUMIFS … stands for: a value, or text such as ">=5", "<>", "C*". */
export function criterion(asked: Cell): Test {
  if (typeof asked === 'number') return equalsNumber(asked);
  if (asked === null) return equalsNumber(0);
  if (typeof asked === 'boolean') return (cell) => cell === asked;
  if (isError(asked)) return (cell) => isError(cell) && cell.code === asked.code;
  const [, operator, text] = FORM.exec(asked) as unknown as [string, string | undefined, string];
  if (text === '') {
    if (operator === undefined) return (cell) => cell === null || cell === '';
    if (operator === '=') return (cell) => cell === null;
    return operator === '<>' ? (cell) => cell !== null : () => false;
  }
  if (operator === undefined || operator === '=') return equalsText(text);
  if (operator !== '<>') return ordered(operator, text);
  const equals = equalsText(text);
  return (cell) => !equals(cell);
}
