import type { FormulaForms } from '../../sheet/formula/forms';
import { shiftFormula } from '../../sheet/formula/shift';
import { type Box, addressOf, boxText, parseBox } from '../../sheet/xlsx/address';
import { type XmlElement, childNamed, childrenNamed, truth } from '../../sheet/xlsx/xml/tree';
import type { GridStyle } from './cell-looks';
import type { Colors } from './colors';
import { COMPARISON_SIGNS } from './comparison-signs';

/** Conditional formats in the form of the grid. Rules with a formula keep it, so that they fire as they do in Excel. */
export interface GridConditionalFormat {
  readonly id: string;
  readonly ranges: string[];
  readonly rule: object;
  readonly stopIfTrue?: boolean;
}

interface Rule {
  readonly element: XmlElement;
  readonly boxes: readonly Box[];
  readonly priority: number;
}

export interface ConditionalFormats {
  readonly formats: GridConditionalFormat[];
  /** Rules that the grid cannot draw. */
  readonly notDrawn: number;
}

const formulasOf = (rule: XmlElement): string[] => childrenNamed(rule, 'formula').map(({ text }) => text);

/** The condition as one formula for the cell at the top left of the first area; undefined for rules that compare cells with each other. */
function condition(rule: XmlElement, cell: string): string | undefined {
  const [first, second] = formulasOf(rule);
  const kind = rule.attributes.get('type');
  if (kind !== 'cellIs') return ['top10', 'aboveAverage', 'duplicateValues', 'uniqueValues', 'colorScale', 'dataBar', 'iconSet'].includes(kind ?? '') ? undefined : first;
  if (first === undefined) return undefined;
  const operator = rule.attributes.get('operator') ?? '';
  if (operator === 'between' || operator === 'notBetween') {
    // Excel takes the two limits in either order.
    const between = (low: string, high: string): string => `AND(${cell}>=(${low}),${cell}<=(${high}))`;
    const within = `OR(${between(first, second ?? '')},${between(second ?? '', first)})`;
    return second === undefined ? undefined : operator === 'between' ? within : `NOT(${within})`;
  }
  const sign = COMPARISON_SIGNS.get(operator);
  return sign === undefined ? undefined : `${cell}${sign}(${first})`;
}

/** Rules that the grid works out itself from all cells of the area. */
function comparison(rule: XmlElement): object | undefined {
  const kind = rule.attributes.get('type');
  if (kind === 'duplicateValues' || kind === 'uniqueValues') return { type: 'CellIsRule', operator: kind, values: [] };
  if (kind !== 'top10') return undefined;
  return { type: 'CellIsRule', operator: 'top10', values: [rule.attributes.get('rank') ?? '10'], isPercent: truth(rule, 'percent'), isBottom: truth(rule, 'bottom') };
}

const THRESHOLDS: Readonly<Record<string, string>> = { min: 'value', max: 'value', num: 'number', percent: 'percentage', percentile: 'percentile', formula: 'formula' };

function colorScale(rule: XmlElement, colors: Colors): object | undefined {
  const scale = childNamed(rule, 'colorScale');
  const shades = childrenNamed(scale, 'color').map(colors);
  const thresholds = childrenNamed(scale, 'cfvo').map(({ attributes }, place) => {
    const type = THRESHOLDS[attributes.get('type') ?? ''];
    const color = shades[place];
    return type === undefined || color === undefined ? undefined : { type, color: Number.parseInt(color.slice(1), 16), value: attributes.get('val') };
  });
  const [first, ...rest] = thresholds;
  const last = rest.pop();
  if (!first || !last || rest.some((each) => !each || each.type === 'value')) return undefined;
  return { type: 'ColorScaleRule', minimum: first, maximum: last, ...(rest[0] ? { midpoint: rest[0] } : {}) };
}

function dataBar(rule: XmlElement, colors: Colors): object | undefined {
  const color = colors(childNamed(childNamed(rule, 'dataBar'), 'color'));
  return color === undefined ? undefined : { type: 'DataBarRule', color: Number.parseInt(color.slice(1), 16) };
}

function rulesOf(root: XmlElement): Rule[] {
  const rules = childrenNamed(root, 'conditionalFormatting').flatMap((area) => {
    const boxes = (area.attributes.get('sqref') ?? '').split(/\s+/).flatMap((text) => parseBox(text) ?? []);
    return boxes.length === 0 ? [] : childrenNamed(area, 'cfRule').map((element) => ({ element, boxes, priority: Number(element.attributes.get('priority')) || 0 }));
  });
  return rules.sort((a, b) => a.priority - b.priority);
}

export function conditionalFormats(root: XmlElement, looks: readonly GridStyle[], colors: Colors, forms: FormulaForms): ConditionalFormats {
  const formats: GridConditionalFormat[] = [];
  let notDrawn = 0;
  rulesOf(root).forEach(({ element, boxes }, number) => {
    const style = looks[Number(element.attributes.get('dxfId') ?? -1)] ?? {};
    const stop = truth(element, 'stopIfTrue') ? { stopIfTrue: true } : {};
    const from = { row: boxes[0]!.top, column: boxes[0]!.left };
    const formula = condition(element, addressOf(from.row, from.column));
    if (formula !== undefined) {
      boxes.forEach((box, place) => {
        const here = shiftFormula(formula, from, { row: box.top, column: box.left });
        formats.push({ id: `rule-${number}-${place}`, ranges: [boxText(box)], ...stop, rule: { type: 'CellIsRule', operator: 'customFormula', values: [`=${forms.toTyped(here)}`], style } });
      });
      return;
    }
    const own = comparison(element);
    const rule = own ? { ...own, style } : colorScale(element, colors) ?? dataBar(element, colors);
    if (rule) formats.push({ id: `rule-${number}`, ranges: boxes.map(boxText), ...stop, rule });
    else notDrawn += 1;
  });
  return { formats, notDrawn };
}
