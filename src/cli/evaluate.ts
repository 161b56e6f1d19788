import { type Cell, CellError, type Matrix } from '../functions/kernel/cell';
import { customFunctions } from '../sheet/custom-functions';
import { type Context, compile, emptyWorkbook, evaluate } from '../sheet/evaluate';
import { hasError, jsonCell, valueLine } from './cell-text';
import { optionsOf } from './options';
import { CouldNotRun, DISAGREES, DONE, type Terminal } from './terminal';

/** Evaluates formulas, one value a line or as JSON. */
export async function evaluateCommand(args: readonly string[], terminal: Terminal): Promise<number> {
  const { values, positionals } = optionsOf(args, { json: { type: 'boolean', default: false } });
  const formulas = positionals.length > 0 ? positionals : linesOf(await terminal.input());
  if (formulas.length === 0) throw new CouldNotRun('no formula to evaluate: give one as an argument or one a line on standard input');
  const context: Context = { workbook: emptyWorkbook, functions: customFunctions, sheet: '', row: 0, column: 0, now: new Date() };
  let failed = false;
  const answers: unknown[] = [];
  for (const formula of formulas) {
    const value = evaluate(compile(formula.trim().replace(/^=/, '')), context);
    failed ||= hasError(value);
    if (values.json) answers.push(answerOf(formula, value));
    else terminal.out(valueLine(value));
  }
  if (values.json) terminal.out(JSON.stringify(answers, null, 2));
  return failed ? DISAGREES : DONE;
}

const linesOf = (text: string): string[] => text.split(/\r?\n/).filter((line) => line.trim() !== '');

function answerOf(formula: string, value: Cell | Matrix): object {
  if (value instanceof CellError) return { formula, error: value.code, message: value.message };
  return { formula, value: Array.isArray(value) ? value.map((row) => row.map(jsonCell)) : value };
}
