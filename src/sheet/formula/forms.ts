import { type Token, parseStructRef, stringifyStructRef, tokenize } from '@borgar/fx/xlsx';
import { NAMESPACE, bareName, isOurName } from '../../functions/kernel/catalogue';
import { functionNames } from '../evaluate/function-table';
import { FormulaSyntaxError, syntaxTree } from '../evaluate/syntax';
import { ANCHOR_ARRAY, FUTURE_FUNCTIONS, SINGLE, withoutPrefix } from './future-functions';
import { lambdaNamePlaces } from './lambda-names';
import { closingBracket, isOperator, operandEnd, operandStart } from './operands';
import { TOKENS } from './shift';

/** A formula that no workbook may hold, and why, in words for the person who typed it. */
export class FormulaRefusal extends Error {
  override readonly name = 'FormulaRefusal';
}

const FILE_PREFIX = `_xldudf_${NAMESPACE}_`;
const PARAMETER = '_xlpm.';

/** A token with what is put before and after it. */
interface Piece {
  text: string;
  before: string;
  after: string;
}

const pieceOf = (token: Token): Piece => ({ text: token.value, before: '', after: '' });
const joined = (pieces: readonly Piece[]): string => pieces.map(({ before, text, after }) => before + text + after).join('').slice(1);
const cut = (formula: string): Token[] => tokenize(`=${formula}`, { ...TOKENS, withLocation: true });

/**
 * Formula text between the form that is typed (`JW.CABLE_K(…)`, `XLOOKUP(…)`, `[@In]`, `A1#`, `@A1:A9`) and the form that files
 * hold (`_xldudf_JW_CABLE_K(…)`, `_xlfn.XLOOKUP(…)`, `t[[#This Row],[In]]`, …). Neither has its leading =.
 */
export class FormulaForms {
  private readonly ours: ReadonlySet<string>;
  private readonly builtIn: ReadonlySet<string> = new Set(functionNames());

  /** @param names bare names of our functions: `CABLE_K` … */
  constructor(names: Iterable<string>) {
    this.ours = new Set([...names].map((name) => name.toUpperCase()));
  }

  /** What files hold, as it is typed. Names are found in any case, since some programs write them small. Never throws. */
  toTyped(formula: string): string {
    const tokens = cut(formula);
    const pieces = tokens.map(pieceOf);
    tokens.forEach((token, index) => {
      const piece = pieces[index]!;
      if (token.type === 'func') this.typedFunction(tokens, pieces, index);
      else if (token.type === 'range_named' && token.value.toLowerCase().startsWith(PARAMETER)) piece.text = token.value.slice(PARAMETER.length);
      else if (token.type === 'structured') piece.text = structuredText(token.value, false);
    });
    return joined(pieces);
  }

  /**
   * What was typed, as files hold it; FormulaRefusal where it is no formula or names a function of ours that there is not.
   * @param table name of the table that the cell belongs to, which `[@In]` means
   */
  toFile(formula: string, table?: string): string {
    judge(formula);
    const tokens = cut(formula);
    const pieces = tokens.map(pieceOf);
    const parameters = lambdaNamePlaces(`=${formula}`);
    tokens.forEach((token, index) => {
      const piece = pieces[index]!;
      const isParameter = parameters.has(token.loc![0]!);
      if (isParameter) piece.text = PARAMETER + token.value.replace(/^_xlpm\./i, '');
      else if (token.type === 'func') piece.text = this.fileFunction(token.value);
      else if (token.type === 'structured') piece.text = structuredText(token.value, true, table);
      else if (token.type.startsWith('range') && token.type !== 'range_named') piece.text = upperAddress(token.value);
      else if (token.type === 'bool') piece.text = token.value.toUpperCase();
      else if (isOperator(token, '@')) {
        piece.text = `${SINGLE}(`;
        pieces[operandEnd(tokens, index + 1)]!.after += ')';
      } else if (isOperator(token, '#')) {
        piece.text = ')';
        const start = pieces[operandStart(tokens, index - 1)]!;
        start.before = `${ANCHOR_ARRAY}(${start.before}`;
      }
    });
    return joined(pieces);
  }

  private typedFunction(tokens: readonly Token[], pieces: Piece[], index: number): void {
    const name = tokens[index]!.value;
    const piece = pieces[index]!;
    if (name.toLowerCase().startsWith(PARAMETER)) piece.text = name.slice(PARAMETER.length);
    else if (isOurName(name)) piece.text = this.ours.has(bareName(name)) ? `${NAMESPACE}.${bareName(name)}` : name;
    else if (same(name, SINGLE) || same(name, ANCHOR_ARRAY)) {
      const close = closingBracket(tokens, index + 1);
      const isSingle = same(name, SINGLE);
      const first = tokens[index + 2];
      const bracketed = operandEnd(tokens, index + 2) !== close - 1 || (first?.type === 'func' && same(first.value, ANCHOR_ARRAY));
      piece.text = isSingle ? '@' : '';
      pieces[index + 1]!.text = bracketed ? '(' : '';
      pieces[close]!.text = (bracketed ? ')' : '') + (isSingle ? '' : '#');
    } else {
      const bare = withoutPrefix(name).toUpperCase();
      if (FUTURE_FUNCTIONS.has(bare) || this.builtIn.has(bare)) piece.text = bare;
    }
  }

  private fileFunction(name: string): string {
    if (isOurName(name)) {
      const bare = bareName(name);
      if (!this.ours.has(bare)) throw new FormulaRefusal(`${NAMESPACE}.${bare} is no function known here`);
      return FILE_PREFIX + bare;
    }
    const upper = withoutPrefix(name).toUpperCase();
    return FUTURE_FUNCTIONS.get(upper) ?? (this.builtIn.has(upper) ? upper : name);
  }
}

const same = (a: string, b: string): boolean => a.toLowerCase() === b.toLowerCase();

/** What spreadsheet programs would report as damage when they open the file. */
function judge(formula: string): void {
  try {
    syntaxTree(formula);
  } catch (cause) {
    if (cause instanceof FormulaSyntaxError) throw new FormulaRefusal(`the formula cannot be read: ${cause.message}`, { cause });
    throw cause;
  }
}

/** A structured reference with its row as `@` where it is typed, as `[#This Row]` and with its table in files. */
function structuredText(text: string, inFile: boolean, table?: string): string {
  const parsed = parseStructRef(text);
  if (!parsed?.sections?.some((section) => /^(this row|@)$/i.test(section))) return text;
  if (!inFile) return stringifyStructRef(parsed);
  if (!parsed.table && table === undefined) throw new FormulaRefusal(`${text} stands outside of a table`);
  return stringifyStructRef({ ...parsed, table: parsed.table || table! }, { thisRow: true });
}

function upperAddress(text: string): string {
  const from = text.lastIndexOf('!') + 1;
  return text.slice(0, from) + text.slice(from).toUpperCase();
}
