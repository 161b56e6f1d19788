/** Why something cannot be drawn, in words for the reader. */
export class ChartTrouble extends Error {}
