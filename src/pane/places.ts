import { areaOf } from '../sheet/evaluate/area';
import { type Box, boxText, parseAddress, parseBox } from '../sheet/xlsx/address';
import type { PaneHost, Selection } from './host';

/** A range of a sheet as the reader writes and reads it. */
export interface Place {
  readonly sheet: string;
  readonly box: Box;
}

/** A sheet's name as formulas write it. */
const sheetInFormula = (sheet: string): string =>
  /^[A-Za-z_][A-Za-z0-9_.]*$/.test(sheet) && !parseAddress(sheet) && !/^r\d*c\d*$/i.test(sheet) ? sheet : `'${sheet.replace(/'/g, "''")}'`;

export const placeText = ({ sheet, box }: Place): string => `${sheetInFormula(sheet)}!${boxText(box)}`;

/** The range with all its sides fixed, for a formula. */
export const fixedText = (box: Box): string => boxText(box).replace(/([A-Z]+)(\d+)/g, '$$$1$$$2');

/** The whole selection, where it is one rectangle. */
export function placeOf(selection: Selection): Place | undefined {
  if (selection.kind !== 'cell') return undefined;
  const box = parseBox(selection.within ?? selection.address);
  return box && { sheet: selection.sheet, box };
}

/**
 * The range that a text names: `Points!A5:B13`, `A5:B13` of the sheet in sight, or a name of the workbook.
 * Undefined where it names none.
 */
export async function placeNamed(text: string, host: PaneHost, here: string): Promise<Place | undefined> {
  const wanted = text.trim().replace(/^=/, '');
  if (wanted === '') return undefined;
  const area = areaOf(wanted);
  if (area) return placeIn(area, here, host);
  const names = (await host.source.names()).filter(({ name }) => name.toLowerCase() === wanted.toLowerCase());
  const named = names.find(({ sheet }) => sheet?.toLowerCase() === here.toLowerCase()) ?? names.find(({ sheet }) => sheet === undefined);
  const found = named && areaOf(named.text);
  return found && placeIn(found, here, host);
}

async function placeIn({ sheet, top, left, bottom, right }: Box & { sheet: string }, here: string, host: PaneHost): Promise<Place | undefined> {
  const wanted = sheet === '' ? here : sheet;
  const known = (await host.sheets()).find((name) => name.toLowerCase() === wanted.toLowerCase());
  if (known === undefined) return undefined;
  // A whole column ends with the cells that hold something.
  const used = await host.source.used(known);
  const box = { top, left, bottom: Math.min(bottom, Math.max(top, used?.[0] ?? top)), right: Math.min(right, Math.max(left, used?.[1] ?? left)) };
  return { sheet: known, box };
}
