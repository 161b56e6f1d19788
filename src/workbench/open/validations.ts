import type { FormulaForms } from '../../sheet/formula/forms';
import { shiftFormula } from '../../sheet/formula/shift';
import { type Box, addressOf, boxText, parseBox } from '../../sheet/xlsx/address';
import { type XmlElement, childNamed, childrenNamed } from '../../sheet/xlsx/xml/tree';
import { COMPARISON_SIGNS } from './comparison-signs';

/** Rules for input in the form of the grid: lists to choose from, and conditions as formulas. */
export interface GridValidation {
  readonly id: string;
  readonly ranges: string[];
  readonly criterion: { readonly type: string; readonly values: string[]; readonly displayStyle?: string };
  readonly isBlocking: boolean;
}

export interface Validations {
  readonly rules: GridValidation[];
  /** Rules that the grid cannot check. */
  readonly notChecked: number;
}

const NUMBERS = new Set(['decimal', 'whole', 'date', 'time']);
const LITERAL_LIST = /^"((?:[^"]|"")*)"$/s;

/** Text of a defined name that is one range, or undefined. */
export type RangeOfName = (name: string) => string | undefined;

function compared(rule: XmlElement, what: string, first: string, second: string | undefined): string | undefined {
  const operator = rule.attributes.get('operator') ?? 'between';
  if (operator !== 'between' && operator !== 'notBetween') {
    const sign = COMPARISON_SIGNS.get(operator);
    return sign === undefined ? undefined : `${what}${sign}(${first})`;
  }
  if (second === undefined) return undefined;
  const within = `AND(${what}>=(${first}),${what}<=(${second}))`;
  return operator === 'between' ? within : `NOT(${within})`;
}

/** What must be true of the cell. */
function condition(rule: XmlElement, cell: string, first: string, second: string | undefined): string | undefined {
  const kind = rule.attributes.get('type') ?? 'none';
  if (kind === 'custom') return first;
  if (kind === 'textLength') return compared(rule, `LEN(${cell})`, first, second);
  const limits = NUMBERS.has(kind) ? compared(rule, cell, first, second) : undefined;
  return limits && `IF(ISNUMBER(${cell}),${kind === 'whole' ? `AND(${cell}=INT(${cell}),${limits})` : limits},FALSE)`;
}

function listCriterion(source: string, rangeOfName: RangeOfName): GridValidation['criterion'] | undefined {
  const literal = LITERAL_LIST.exec(source)?.[1];
  if (literal !== undefined) return { type: 'isValueInList', values: literal.replace(/""/g, '"').split(',').map((word) => word.trim()).filter((word) => word !== ''), displayStyle: 'arrow' };
  const range = rangeOfName(source) ?? source;
  return /^(?:'(?:[^']|'')+'!|[\p{L}\p{N}_.]+!)?\$?[A-Z]{1,3}\$?\d+(?::\$?[A-Z]{1,3}\$?\d+)?$/u.test(range) ? { type: 'isValueInRange', values: [range], displayStyle: 'arrow' } : undefined;
}

function rulesOfOne(rule: XmlElement, number: number, forms: FormulaForms, rangeOfName: RangeOfName): GridValidation[] | undefined {
  const boxes = (rule.attributes.get('sqref') ?? '').split(/\s+/).flatMap((text): Box[] => { const box = parseBox(text); return box ? [box] : []; });
  const [first, second] = [childNamed(rule, 'formula1')?.text, childNamed(rule, 'formula2')?.text];
  if (first === undefined || boxes.length === 0) return undefined;
  const isBlocking = ['1', 'true'].includes(rule.attributes.get('showErrorMessage') ?? '') && (rule.attributes.get('errorStyle') ?? 'stop') === 'stop';
  if (rule.attributes.get('type') === 'list') {
    const criterion = listCriterion(first, rangeOfName);
    return criterion && [{ id: `input-${number}`, ranges: boxes.map(boxText), criterion, isBlocking }];
  }
  const from = { row: boxes[0]!.top, column: boxes[0]!.left };
  const formula = condition(rule, addressOf(from.row, from.column), first, second);
  return formula === undefined ? undefined : boxes.map((box, place) => ({
    id: `input-${number}-${place}`, ranges: [boxText(box)], isBlocking,
    criterion: { type: 'customFormula', values: [`=${forms.toTyped(shiftFormula(formula, from, { row: box.top, column: box.left }))}`] },
  }));
}

export function validationsOf(root: XmlElement, forms: FormulaForms, rangeOfName: RangeOfName): Validations {
  const rules: GridValidation[] = [];
  let notChecked = 0;
  childrenNamed(childNamed(root, 'dataValidations'), 'dataValidation').forEach((rule, number) => {
    if ((rule.attributes.get('type') ?? 'none') === 'none') return;
    const made = rulesOfOne(rule, number, forms, rangeOfName);
    if (made) rules.push(...made);
    else notChecked += 1;
  });
  return { rules, notChecked };
}
