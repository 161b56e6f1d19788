import type { HostTraits } from '../../functions/kernel/call';
import { catalogue } from '../../sheet/catalogue';
import { callsInFormula } from '../../sheet/explain/calls-in-formula';
import { TooMuch } from '../../sheet/explain/loaded-workbook';
import { Tracer } from '../../sheet/explain/trace';
import { addressOf, boxText } from '../../sheet/xlsx/address';
import type { PaneHost, Selection } from '../host';
import { type Place, placeText } from '../places';
import { CHARTS, type ChartKind, PARTS, type PartKind } from './kinds';
import { type DrawnCall, drawnCall } from './marks-from-call';
import { type CostOption, type Money, bandFromCells, costMarks, curveFromCells, figureFromCells, levelMark, optionsFromCells, profileFromCells, withstandMark } from './marks-from-cells';
import type { Plot, PlotMark } from './plot';
import { ChartTrouble } from './trouble';

/** One thing on a chart: where it comes from in the sheet. What it draws is read anew each time. */
export interface Part {
  readonly words: string;
  readonly from: string;
  read(host: PaneHost): Promise<Drawn>;
}
export interface Drawn {
  readonly marks: readonly PlotMark[];
  readonly places?: readonly string[];
  readonly options?: readonly CostOption[];
}

export interface PartChoice {
  readonly part: PartKind;
  readonly place: Place;
  readonly name: string;
  /** Tolerance of a time-current curve in current, %. */
  readonly tolerancePct: number;
}

/** A part out of a range. */
export function rangePart(kind: ChartKind, { part, place, name, tolerancePct }: PartChoice, money: () => Money): Part {
  const called = name === '' ? PARTS[part].words : name;
  const draw = (cells: Awaited<ReturnType<PaneHost['read']>>): Drawn => {
    switch (part) {
      case 'curve':
        return { marks: [curveFromCells(kind === 'joule' || kind === 'cut-off' ? kind : 'time', cells, tolerancePct, called)] };
      case 'band':
        return { marks: [bandFromCells(cells, called)] };
      case 'withstand':
        return { marks: [withstandMark(kind, figureFromCells(cells, called, 'A²s'), called)] };
      case 'level':
        return { marks: [levelMark(kind, figureFromCells(cells, called, 'kA'), called)] };
      case 'limit':
        return { marks: [{ kind: 'at y', name: called, value: figureFromCells(cells, called, 'J/cm²') }] };
      case 'profile':
        return profileFromCells(cells);
      case 'option':
        return { marks: [], options: optionsFromCells(cells, money()) };
    }
  };
  return { words: called, from: placeText(place), read: async (host) => draw(await host.read(place.sheet, boxText(place.box))) };
}

type SelectedCell = Extract<Selection, { kind: 'cell' }>;

/** What the calls of a formula draw, in the order of the formula; `named` makes the name on the chart out of that of the function. */
export async function callsDrawn(cell: SelectedCell, host: PaneHost, named = (name: string): string => name): Promise<DrawnCall[]> {
  const formula = callsInFormula(cell.formula, catalogue);
  const traits: HostTraits = host.traits;
  const { outcomes } = await new Tracer(catalogue, formula, cell, host.source).trace({ traits, blanksAsZero: false }).catch((thrown: unknown) => {
    throw thrown instanceof TooMuch ? new ChartTrouble(`${cell.address} ${thrown.message}.`) : thrown;
  });
  return formula.calls.flatMap((each) => {
    const found = outcomes.get(each);
    const drawn = found && drawnCall(found.outcome, named(each.entry.member.name));
    return drawn ? [drawn] : [];
  });
}

/** A part out of the calls of a cell; it follows the cell when that changes. */
export function cellPart(kind: ChartKind, cell: SelectedCell, calls: readonly string[]): Part {
  const from = placeText({ sheet: cell.sheet, box: { top: cell.row, left: cell.column, bottom: cell.row, right: cell.column } });
  return {
    words: calls.join(', '),
    from,
    read: async (host) => {
      const address = addressOf(cell.row, cell.column);
      const now = (await host.formulaCells(cell.sheet)).find((each) => each.address === address);
      if (!now) throw new ChartTrouble(`${cell.sheet}!${address} holds no formula any more.`);
      const drawn = (await callsDrawn({ ...cell, formula: now.formula }, host, (name) => `${name} ${from}`)).filter((each) => each.kind === kind);
      const places = drawn.find((each) => each.places)?.places;
      return { marks: drawn.flatMap(({ marks }) => marks), ...(places ? { places } : {}) };
    },
  };
}

/** Reads all parts; what could not be read is told, the rest is drawn. */
export async function plotOf(kind: ChartKind, parts: readonly Part[], host: PaneHost, money: Money): Promise<{ plot: Plot; troubles: string[] }> {
  const troubles: string[] = [];
  const drawn = await Promise.all(parts.map(async (part): Promise<Drawn> => {
    try {
      return await part.read(host);
    } catch (thrown) {
      troubles.push(thrown instanceof ChartTrouble || thrown instanceof RangeError ? `${part.from}: ${thrown.message}` : `${part.from} could not be read just now.`);
      return { marks: [] };
    }
  }));
  const { title, x, y } = CHARTS[kind];
  const places = drawn.find((each) => each.places)?.places;
  const options = drawn.flatMap((each) => each.options ?? []);
  const marks = [...drawn.flatMap((each) => each.marks), ...(options.length > 0 ? costMarks(options, money) : [])];
  return { plot: { title, x: places ? { ...x, places } : x, y, marks: unlike(marks) }, troubles };
}

/** Two calls may draw the same line; once is enough. */
const unlike = (marks: readonly PlotMark[]): PlotMark[] => {
  const seen = new Set<string>();
  return marks.filter((mark) => {
    const key = JSON.stringify(mark);
    return seen.has(key) ? false : Boolean(seen.add(key));
  });
};
