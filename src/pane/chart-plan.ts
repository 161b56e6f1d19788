/** A chart of points in a sheet, drawn from cells. */
export interface ChartPlan {
  readonly title: string;
  /** Where it stands: the cells it covers. */
  readonly sheet: string;
  readonly at: string;
  readonly x: ChartAxis;
  readonly y: ChartAxis;
  readonly series: readonly ChartSeries[];
}

export interface ChartAxis {
  readonly title: string;
  readonly logarithmic: boolean;
  readonly least?: number;
  readonly greatest?: number;
}

export interface ChartSeries {
  readonly name: string;
  /** Sheet and ranges of one column each, of one length. */
  readonly sheet: string;
  readonly x: string;
  readonly y: string;
  /** #rrggbb */
  readonly colour: string;
  readonly drawn: 'line' | 'dashed' | 'points';
}
