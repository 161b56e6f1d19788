import type { PlotAxis } from './plot';

export type ChartKind = 'time' | 'cut-off' | 'joule' | 'profile' | 'cost' | 'arc';

/** What can be put on a chart from a range. */
export type PartKind = 'curve' | 'band' | 'withstand' | 'level' | 'profile' | 'option' | 'limit';

export interface ChartFacts {
  readonly title: string;
  readonly words: string;
  readonly x: PlotAxis;
  readonly y: PlotAxis;
  readonly parts: readonly PartKind[];
}

const log = (title: string): PlotAxis => ({ title, logarithmic: true });
const linear = (title: string): PlotAxis => ({ title, logarithmic: false });

export const CHARTS: Readonly<Record<ChartKind, ChartFacts>> = {
  time: { title: 'Time-current', words: 'time-current, with fault levels', x: log('current, A'), y: log('time, s'), parts: ['curve', 'band', 'withstand', 'level'] },
  'cut-off': { title: 'Cut-off', words: 'cut-off current', x: log('prospective current, kA r.m.s.'), y: log('cut-off, kA peak'), parts: ['curve', 'level'] },
  joule: { title: 'Joule integral', words: 'joule integral against k²S²', x: log('prospective current, kA r.m.s.'), y: log('joule integral, A²s'), parts: ['curve', 'withstand', 'level'] },
  profile: { title: 'Fault level along the path', words: 'fault level along the path', x: linear('from the source to the board'), y: linear('fault current, kA'), parts: ['profile'] },
  cost: { title: 'Present cost against fault rate', words: 'present cost against fault rate', x: linear('faults a year'), y: linear('present cost, money of the sheet'), parts: ['option'] },
  arc: { title: 'Arc energy against distance', words: 'arc energy against distance', x: log('distance, mm'), y: log('arc energy, J/cm²'), parts: ['limit'] },
};

export interface PartFacts {
  readonly words: string;
  /** What the range must hold. */
  readonly takes: string;
}
export const PARTS: Readonly<Record<PartKind, PartFacts>> = {
  curve: { words: 'curve from points', takes: 'two columns of points, with or without headings' },
  band: { words: 'breaker’s band', takes: 'four columns as TRIP_BAND gives them: fast A, fast s, slow A, slow s' },
  withstand: { words: 'cable withstand', takes: 'a cell with k²S² in A²s' },
  level: { words: 'fault level', takes: 'a cell with a current in kA' },
  profile: { words: 'path from NET_PROFILE', takes: 'the table that NET_PROFILE gives: board, Z, Ik3, Ik1' },
  option: { words: 'options', takes: 'rows of four columns: name, first cost, yearly cost without faults, cost of one fault' },
  limit: { words: 'energy limit', takes: 'a cell with an energy in J/cm²' },
};
