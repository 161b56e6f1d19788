import { sheetOfPrefix } from '../../sheet/formula/sheet-prefix';
import { formulaPieces, textOf } from './formula-pieces';
import type { CompiledFormula, CoreGetters, EvalContext, Execute, Range, RangeStringOptions } from './library';
import { runInGrid } from './run';

/**
 * The grid's own reading of formulas differs from Excel's without saying so (-2^2, LOG10, blanks, order of SORT …) and has
 * no LET, @ or tables. So the class that stands for a formula in a cell is replaced: text stays as typed, references
 * still move when a formula is copied, and the value comes from the evaluator that all hosts share.
 */

type Adapt = Parameters<CompiledFormula['adaptCompiledFormula']>[0];
type BaseClass = new (sheetId: string, tokens: [], literals: CompiledFormula['literalValues'], symbols: string[], ranges: readonly Range[], isBad: boolean, normalized: string, execute: Execute) => CompiledFormula;

/** What the grid's own code calls when it makes formulas. */
interface Statics {
  Compile(formula: string, sheetId: string, getters: CoreGetters): CompiledFormula;
  IsBadExpression(formula: string): boolean;
  CopyWithDependencies(base: CompiledFormula, sheetId: string, ranges: Range[]): CompiledFormula;
  CopyWithDependenciesAndLiteral(base: CompiledFormula, sheetId: string, ranges: Range[]): CompiledFormula;
  CompileForSerializedFormula(sheetId: string, base: { normalizedFormula: string; rangeDependencies: Range[] }): CompiledFormula;
}

const NO_LITERALS = { numbers: [], strings: [] };
const OUT_OF_SHEET = /#REF(?!!)/g;

/** Prefix of a reference up to its exclamation mark, and the address behind it. */
function parted(reference: string): { prefix: string; address: string } {
  const cut = reference.lastIndexOf('!') + 1;
  return { prefix: reference.slice(0, cut), address: reference.slice(cut) };
}

/** Cells of a reference as the grid keeps them; sheets are found by their names as Excel quotes them. */
function rangeOf(reference: string, sheetId: string, getters: CoreGetters): Range {
  const { prefix, address } = parted(reference);
  const target = prefix === '' ? sheetId : getters.getSheetIdByName(sheetOfPrefix(prefix));
  return target === undefined ? getters.getRangeFromSheetXC(sheetId, reference) : getters.getRangeFromSheetXC(target, address);
}

function withReferences(written: string, ranges: readonly Range[], getters: CoreGetters, options?: RangeStringOptions): string {
  let place = 0;
  return formulaPieces(written).map(({ text, isReference }) => {
    if (!isReference) return text;
    const range = ranges[place++]!;
    return parted(text).prefix + getters.getRangeString(range, range.sheetId, options).replace(OUT_OF_SHEET, '#REF!');
  }).join('');
}

/** Replaces the grid's reader of formulas by ours, for all models made afterwards. `probe` is any formula of the grid. */
export function installSheetFormula(probe: CompiledFormula): void {
  const Base = probe.constructor as unknown as BaseClass & Statics;
  if ('isReplaced' in Base) return;

  class SheetFormula extends (Base as BaseClass) {
    /** Text with the references as they are now; known at once unless the formula was moved. */
    private current: string | undefined;

    constructor(sheetId: string, private readonly written: string, ranges: readonly Range[], moved: boolean) {
      super(sheetId, [], NO_LITERALS, [], ranges, false, written, (_deps, _ref, _range, _symbol, context) => runInGrid(this.text((context as EvalContext).getters), context as EvalContext));
      this.current = moved ? undefined : written;
    }

    static read(formula: string, sheetId: string, getters: CoreGetters): SheetFormula {
      const pieces = formulaPieces(formula);
      const ranges = pieces.filter(({ isReference }) => isReference).map(({ text }) => rangeOf(text, sheetId, getters));
      return new SheetFormula(sheetId, textOf(pieces), ranges, false);
    }

    moved(sheetId: string, ranges: readonly Range[]): SheetFormula {
      return new SheetFormula(sheetId, this.written, ranges, true);
    }

    private text(getters: CoreGetters): string {
      return (this.current ??= withReferences(this.written, this.rangeDependencies, getters));
    }

    override usesSymbol(symbol: string): boolean {
      return new RegExp(`(?:^|[^\\w.])${symbol.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')}\\s*\\(`, 'i').test(this.written);
    }

    override toFormulaString(getters: CoreGetters, options?: RangeStringOptions): string {
      return options === undefined ? this.text(getters) : withReferences(this.written, this.rangeDependencies, getters, options);
    }

    /** The composer prints this; a single node keeps the text as it is. */
    override getAst(getters: CoreGetters): ReturnType<CompiledFormula['getAst']> {
      return { type: 'REFERENCE', value: this.text(getters).slice(1), tokenStartIndex: 0, tokenEndIndex: 0 } as unknown as ReturnType<CompiledFormula['getAst']>;
    }

    override adaptCompiledFormula(applyChange: Adapt): CompiledFormula {
      const changes = this.rangeDependencies.map(applyChange);
      return changes.every(({ changeType }) => changeType === 'NONE') ? this : this.moved(this.sheetId, changes.map(({ range }) => range));
    }

    override getNamedRangesInFormula(): [] {
      return [];
    }

    override getFunctionsFromTokens(): [] {
      return [];
    }

    override areAllFunctionsExportableToExcel(): boolean {
      return true;
    }

    override isFirstNonWhitespaceSymbol(symbol: string): boolean {
      return new RegExp(`^=\\s*${symbol}\\b`, 'i').test(this.written);
    }
  }

  const statics: Statics & { isReplaced: true } = {
    isReplaced: true,
    Compile: (formula, sheetId, getters) => SheetFormula.read(formula, sheetId, getters),
    // Whether a formula can be read shows in its cell, in words; none is turned away before.
    IsBadExpression: () => false,
    CopyWithDependencies: (base, sheetId, ranges) => (base as SheetFormula).moved(sheetId, ranges),
    CopyWithDependenciesAndLiteral: (base, sheetId, ranges) => (base as SheetFormula).moved(sheetId, ranges),
    CompileForSerializedFormula: (sheetId, base) => new SheetFormula(sheetId, base.normalizedFormula, base.rangeDependencies, true),
  };
  Object.assign(Base, statics);
}
