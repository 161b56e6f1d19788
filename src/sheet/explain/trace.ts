import { Recorder } from '../../core/working';
import { type HostTraits, type Outcome, call } from '../../functions/kernel/call';
import type { Catalogue } from '../../functions/kernel/catalogue';
import type { Argument, Cell, Matrix } from '../../functions/kernel/cell';
import type { CustomFunctions } from '../evaluate/context';
import { compile, evaluate } from '../evaluate/evaluate';
import type { CallInFormula, FormulaCalls } from './calls-in-formula';
import type { ExplainedCell, ValueSource } from './explanation';
import { LoadedWorkbook, Wanted } from './loaded-workbook';

/** What a formula gave, and how each of our calls in it went: the last time it was worked, and how often. */
export interface Trace {
  readonly value: Cell | Matrix;
  readonly outcomes: ReadonlyMap<CallInFormula, { outcome: Outcome; times: number }>;
}

export interface TraceOptions {
  readonly traits: HostTraits;
  /** Blank cells go to our functions as 0, as some hosts hand them over. */
  readonly blanksAsZero: boolean;
}

const zeroForBlank = (argument: Argument): Argument =>
  argument === null ? 0 : Array.isArray(argument) ? argument.map((row) => row.map((cell) => cell ?? 0)) : argument;

function traced(catalogue: Catalogue, calls: readonly CallInFormula[], outcomes: Map<CallInFormula, { outcome: Outcome; times: number }>, options: TraceOptions): CustomFunctions {
  const byMark = new Map(calls.map((each) => [each.mark, each]));
  return {
    find: (name) => {
      const found = byMark.get(name);
      return found && ((args) => {
        const outcome = call(catalogue, found.entry, options.blanksAsZero ? args.map(zeroForBlank) : args, options.traits, new Recorder());
        outcomes.set(found, { outcome, times: (outcomes.get(found)?.times ?? 0) + 1 });
        return outcome.value;
      });
    },
  };
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
    for (let round = 0; round < ROUNDS; round += 1) {
      const outcomes = new Map<CallInFormula, { outcome: Outcome; times: number }>();
      const functions = traced(this.catalogue, this.formula.calls, outcomes, options);
      try {
        return { value: evaluate(compiled, { workbook: this.workbook, functions, sheet, row, column, now: this.now }), outcomes };
      } catch (thrown) {
        if (!(thrown instanceof Wanted)) throw thrown;
        await thrown.load();
      }
    }
    throw new Error('the formula asks for cells without end');
  }
}
