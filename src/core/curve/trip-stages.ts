import { atLeast } from '../judgement';
import { type Edge, edgeFactor } from './edge';
import type { TripSettings } from './trip-settings';

/**
 * One stage of a release at one edge. Every stage is a level line, an I²t line, or the higher of the two:
 * t = max(level, joule/I²) from its pick-up current on.
 */
export interface Stage {
  readonly name: 'long-time' | 'short-time' | 'instantaneous';
  /** Pick-up current, A, moved to the edge. */
  readonly from: number;
  /** Shortest time, s. */
  readonly level: number;
  /** Constant of the I²t line, A²s. */
  readonly joule: number;
}

/** The stages that are on, moved to an edge by their tolerances in current. */
export function stagesAt(settings: TripSettings, edge: Edge): Stage[] {
  const { ir, tr, trMultiple, shortTime, instantaneous } = settings;
  const delayed = edgeFactor(edge, settings.delayedTolerancePct);
  const stages: Stage[] = [{ name: 'long-time', from: 0, level: 0, joule: tr * (trMultiple * ir * delayed) ** 2 }];
  if (shortTime) {
    const { isd, tsd, i2tUntil } = shortTime;
    stages.push({ name: 'short-time', from: isd * delayed, level: tsd, joule: i2tUntil === undefined ? 0 : tsd * (i2tUntil * delayed) ** 2 });
  }
  if (instantaneous) {
    const { ii, time } = instantaneous;
    stages.push({ name: 'instantaneous', from: ii * edgeFactor(edge, settings.instantaneousTolerancePct), level: time, joule: 0 });
  }
  return stages;
}

export const stageTime = ({ level, joule }: Stage, current: number): number => Math.max(level, joule / current ** 2);

/** The stage that trips first at a current, among those reached. */
export function firstStage(stages: readonly Stage[], current: number): Stage {
  return stages.filter(({ from }) => atLeast(current, from)).reduce((first, stage) => (stageTime(stage, current) < stageTime(first, current) ? stage : first));
}

/**
 * Time of the later stage reached where the long-time law still gives less, s; undefined where it does not. The least of the stages
 * counts, as declared, but a release seldom trips sooner than the delay that is set for that current.
 */
export function undercutTime(stages: readonly Stage[], current: number): number | undefined {
  const later = stages.filter(({ name, from }) => name !== 'long-time' && atLeast(current, from));
  const time = Math.min(...later.map((stage) => stageTime(stage, current)));
  return later.length === 0 || atLeast(stageTime(firstStage(stages, current), current), time) ? undefined : time;
}
