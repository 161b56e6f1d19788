import { figure } from '../figure';
import { atMost } from '../judgement';
import { missing, outOfRange } from '../refusal';

/** What is set on a breaker's release, as the user's row of the device holds it; undefined where a stage is off. */
export interface TripSettings {
  /** Long-time setting, A. */
  readonly ir: number;
  /** Long-time delay, s, stated at a multiple of ir. */
  readonly tr: number;
  readonly trMultiple: number;
  readonly shortTime: ShortTime | undefined;
  readonly instantaneous: Instantaneous | undefined;
  /** Tolerance of the two delayed releases in current, %. */
  readonly delayedTolerancePct: number;
  /** Tolerance of the instantaneous release in current, %. */
  readonly instantaneousTolerancePct: number;
}

export interface ShortTime {
  /** Setting, A. */
  readonly isd: number;
  /** Longest time, s. */
  readonly tsd: number;
  /** With an I²t ramp: up to this current, A, the time follows I²t, and is tsd from there. */
  readonly i2tUntil: number | undefined;
}

export interface Instantaneous {
  /** Setting, A. */
  readonly ii: number;
  /** Total breaking time, s. */
  readonly time: number;
}

/** The cells of a device's row as they are typed. */
export interface TripCells {
  readonly ir_A: number;
  readonly tr_s: number;
  readonly isd_A: number | 'off';
  readonly tsd_s: number | undefined;
  readonly ii_A: number | 'off';
  readonly ii_s: number | undefined;
  readonly delayed_tol_pct: number;
  readonly ii_tol_pct: number;
  readonly i2t_until_A: number | 'off' | undefined;
  readonly tr_multiple: number;
}

const amperes = (current: number): string => `${figure(current)} A`;

/** Settings that belong together, or the refusal that says which do not: stages must stand in the order Ir < Isd ≤ Ii, and a stage that is on needs its time. */
export function tripSettings(cells: TripCells): TripSettings {
  const { ir_A: ir, tr_s: tr, isd_A: isd, tsd_s: tsd, ii_A: ii, ii_s: time, i2t_until_A: until } = cells;
  if (isd !== 'off' && tsd === undefined) throw missing('tsd_s');
  if (ii !== 'off' && time === undefined) throw missing('ii_s');
  if (isd !== 'off' && atMost(isd, ir)) throw outOfRange('isd_A', `${amperes(isd)} does not exceed ir_A, ${amperes(ir)}`);
  if (ii !== 'off' && isd !== 'off' && !atMost(isd, ii)) throw outOfRange('ii_A', `${amperes(ii)} is below isd_A, ${amperes(isd)}`);
  if (ii !== 'off' && atMost(ii, ir)) throw outOfRange('ii_A', `${amperes(ii)} does not exceed ir_A, ${amperes(ir)}`);
  return {
    ir, tr, trMultiple: cells.tr_multiple,
    shortTime: isd === 'off' ? undefined : { isd, tsd: tsd!, i2tUntil: until === 'off' ? undefined : until },
    instantaneous: ii === 'off' ? undefined : { ii, time: time! },
    delayedTolerancePct: cells.delayed_tol_pct,
    instantaneousTolerancePct: cells.ii_tol_pct,
  };
}
