import { Recorder } from '../../core/working';
import { type HostTraits, type Outcome, call } from '../../functions/kernel/call';
import type { Catalogue } from '../../functions/kernel/catalogue';
import { type Argument, type Cell, CellError, type Matrix } from '../../functions/kernel/cell';
import type { CustomFunctions } from '../evaluate/context';
import { compile, evaluate, evaluateValue } from '../evaluate/evaluate';
import { Reference } from '../evaluate/references';
import { type Box, oneCell } from '../xlsx/address';
import type { CallInFormula, FormulaCalls } from './calls-in-formula';
import type { ExplainedCell, ValueSource } from './explanation';
import { LoadedWorkbook, Wanted } from './loaded-workbook';

/** What a formula gave, and how each of our calls in it went: the last time it was worked, and how often. */
export interface Trace {
  readonly value: Cell | Matrix;
  readonly outcomes: ReadonlyMap<CallInFormula, TracedCall>;
}

export interface TracedCall {
  readonly outcome: Outcome;
  readonly argv: readonly Argument[];
  readonly times: number;
}

export interface TraceOptions {
  readonly traits: HostTraits;
  /** Blank cells go to our functions as 0, as some hosts hand them over. */
  readonly blanksAsZero: boolean;
}

const zeroForBlank = (argument: Argument): Argument =>
  argument === null ? 0 : Array.isArray(argument) ? argument.map((row) => row.map((cell) => cell ?? 0)) : argument;

function traced(catalogue: Catalogue, calls: readonly CallInFormula[], outcomes: Map<CallInFormula, TracedCall>, options: TraceOptions): CustomFunctions {
  const byMark = new Map(calls.map((each) => [each.mark, each]));
  return {
    find: (name) => {
      const found = byMark.get(name);
      return found && ((args) => {
        const argv = options.blanksAsZero ? args.map(zeroForBlank) : args;
        const outcome = call(catalogue, found.entry, argv, options.traits, new Recorder());
        outcomes.set(found, { outcome, argv, times: (outcomes.get(found)?.times ?? 0) + 1 });
        return outcome.value;
      });
    },
  };
}

export interface ResolvedReference {
  readonly sheet: string;
  readonly box: Box;
  readonly value?: Cell;
}

/** A name that means nothing, or a column that is not there, is an error of its own elsewhere. */
function resolved<T>(work: () => T): T | undefined {
  try {
    return work();
  } catch (thrown) {
    if (thrown instanceof CellError) return undefined;
    throw thrown;
  }
}

/** A formula asks for more in each round; one that never has enough is refused. */
const ROUNDS = 100;

export class Tracer {
  private readonly workbook: LoadedWorkbook;
  private readonly now = new Date();

  constructor(private readonly catalogue: Catalogue, private readonly formula: FormulaCalls, private readonly cell: ExplainedCell, source: ValueSource) {
    this.workbook = new LoadedWorkbook(source);
  }

  /** Works the formula out and takes down our calls in it; values are asked of the host as they are needed. */
  async trace(options: TraceOptions): Promise<Trace> {
    const { sheet, row, column } = this.cell;
    for (const area of this.formula.areas) await this.workbook.load(area.sheet || sheet, area);
    const compiled = compile(this.formula.marked);
    return this.loading(() => {
      const outcomes = new Map<CallInFormula, TracedCall>();
      const functions = traced(this.catalogue, this.formula.calls, outcomes, options);
      return { value: evaluate(compiled, { workbook: this.workbook, functions, sheet, row, column, now: this.now }), outcomes };
    });
  }

  /** The cells that a reference in the formula means, and what a single one holds; undefined where it means none. */
  async resolve(reference: string): Promise<ResolvedReference | undefined> {
    const { sheet, row, column } = this.cell;
    const context = { workbook: this.workbook, functions: { find: () => undefined }, sheet, row, column, now: this.now };
    return this.loading(() => {
      const value = resolved(() => evaluateValue(compile(reference), context));
      if (!(value instanceof Reference) || this.workbook.used(value.sheet) instanceof CellError) return undefined;
      const { top, left, bottom, right } = value;
      const box = { top, left, bottom, right };
      return { sheet: value.sheet, box, ...(oneCell(box) ? { value: this.workbook.get(value.sheet, top, left) } : {}) };
    });
  }

  /** Does something that may come upon cells not asked for yet, until it has them all. */
  private async loading<T>(work: () => T): Promise<T> {
    for (let round = 0; round < ROUNDS; round += 1) {
      try {
        return work();
      } catch (thrown) {
        if (!(thrown instanceof Wanted)) throw thrown;
        await thrown.load();
      }
    }
    throw new Error('the formula asks for cells without end');
  }
}
