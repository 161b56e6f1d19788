import { type Cell, CellError, type Matrix } from '../../../src/functions/kernel/cell';
import { type Context, type CustomFunctions, type Value, type Workbook, Reference, compile, evaluate, evaluateValue } from '../../../src/sheet/evaluate';

const place = (address: string): [row: number, column: number] => {
  const [, letters, row] = /^([A-Z]+)(\d+)$/.exec(address)!;
  const column = [...letters!].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;
  return [Number(row) - 1, column];
};

const noFunctions: CustomFunctions = { find: () => undefined };

interface Options {
  names?: Record<string, string>;
  formulas?: Record<string, string>;
  hidden?: Record<number, 'filter' | 'hand'>;
}

/** A workbook of one sheet, "Data", whose cells are given by address; names are formulas. */
export class SmallWorkbook implements Workbook {
  private readonly cells = new Map<string, Cell>();
  private last: [number, number] = [0, 0];
  private readonly names: ReadonlyMap<string, string>;
  private readonly formulas: ReadonlyMap<string, string>;

  constructor(cells: Record<string, Cell>, private readonly options: Options = {}) {
    for (const [address, cell] of Object.entries(cells)) {
      const [row, column] = place(address);
      this.cells.set(`${row},${column}`, cell);
      this.last = [Math.max(this.last[0], row), Math.max(this.last[1], column)];
    }
    this.names = new Map(Object.entries(options.names ?? {}).map(([name, formula]) => [name.toLowerCase(), formula]));
    this.formulas = new Map(Object.entries(options.formulas ?? {}).map(([address, formula]) => [place(address).join(), formula]));
  }

  get(sheet: string, row: number, column: number): Cell {
    if (sheet.toLowerCase() !== 'data') return new CellError('#REF!', `there is no sheet "${sheet}"`);
    return this.cells.get(`${row},${column}`) ?? null;
  }

  used(sheet: string): readonly [number, number] | CellError {
    return sheet.toLowerCase() === 'data' ? this.last : new CellError('#REF!', `there is no sheet "${sheet}"`);
  }

  named(context: Context, name: string): Value {
    const formula = this.names.get(name.toLowerCase());
    return formula === undefined ? new CellError('#NAME?', `the name ${name} is not defined`) : evaluateValue(compile(formula), context);
  }

  structured(): Value {
    return new Reference(this, 'Data', 0, 0, 1, 0);
  }

  spill(reference: Reference): Value {
    return new Reference(this, reference.sheet, reference.top, reference.left, reference.top + 2, reference.left);
  }

  formula(_sheet: string, row: number, column: number): string | undefined {
    return this.formulas.get(`${row},${column}`);
  }

  hidden(_sheet: string, row: number): 'filter' | 'hand' | undefined {
    return this.options.hidden?.[row + 1];
  }
}

interface Place {
  functions?: CustomFunctions;
  now?: Date;
  at?: string;
  oneCell?: boolean;
}

/** Runs a formula on a workbook; it stands in H3 unless another place is given. */
export function run(formula: string, workbook: Workbook = new SmallWorkbook({}), { functions = noFunctions, now, at = 'H3', oneCell }: Place = {}): Cell | Matrix {
  const [row, column] = place(at);
  return evaluate(compile(formula, { oneCell }), { workbook, functions, sheet: 'Data', row, column, ...(now ? { now } : {}) });
}

/** Code and message of a result that must be an error. */
export function errorOf(result: Cell | Matrix): { code: string; message: string } {
  if (!(result instanceof CellError)) throw new Error(`not an error: ${JSON.stringify(result)}`);
  return { code: result.code, message: result.message };
}
