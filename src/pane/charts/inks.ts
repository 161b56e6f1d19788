/** Colours by their part in a chart. On the page they follow the pane's looks; in a file they are those of a light ground. */
export type Ink = 'ink' | 'soft' | 'rule' | 'faint' | 'ground' | 'bad' | SeriesInk;
export type SeriesInk = `series-${0 | 1 | 2 | 3 | 4 | 5 | 6 | 7}`;

/** Each at least 4.5 to 1 against white. */
const SERIES = ['#0b5c8a', '#b3401c', '#2c7030', '#7a3e9d', '#7c5800', '#006e65', '#a8195f', '#4a4a4a'] as const;

export const seriesInk = (place: number): SeriesInk => `series-${(place % SERIES.length) as 0}`;
export const seriesColour = (place: number): string => SERIES[place % SERIES.length]!;

/** Dashes tell lines apart without colour. */
const DASHES: readonly (readonly number[])[] = [[], [7, 3], [2, 2.5], [9, 3, 2, 3], [12, 4], [4, 2], [7, 2, 2, 2, 2, 2], [14, 3, 4, 3]];
export const dashOf = (place: number): readonly number[] => DASHES[place % DASHES.length]!;

const ON_PAPER: Readonly<Record<Exclude<Ink, SeriesInk>, string>> = { ink: '#1d2a2f', soft: '#56666c', rule: '#b7c0c4', faint: '#e6ebed', ground: '#ffffff', bad: '#9d2417' };
export const paperColour = (ink: Ink): string => (ink.startsWith('series-') ? SERIES[Number(ink.slice('series-'.length))]! : ON_PAPER[ink as keyof typeof ON_PAPER]);
