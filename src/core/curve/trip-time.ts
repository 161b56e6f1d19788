import { figure } from '../figure';
import { atLeast, atMost } from '../judgement';
import { outOfRange } from '../refusal';
import { breakerFactors } from '../standards/conventional-currents';
import { type Working, silent } from '../working';
import type { Edge } from './edge';
import type { TripSettings } from './trip-settings';
import { type Stage, firstStage, stageTime, stagesAt } from './trip-stages';

/** Where the band of a breaker begins: a slow one must trip from here, a fast one may above here. */
export const bandStart = (ir: number, edge: Edge): number => ir * (edge === 'fast' ? breakerFactors['no trip'] : breakerFactors.trip);

/**
 * Tripping time of a breaker from its settings, at one edge: the least of the stages reached.
 * Source: IEC 60947-2:2016, 8.3.3.1 (from memory); I²t law and 6·Ir: common release practice.
 * @param current current, A
 * @returns time, s
 */
export function tripTime(current: number, settings: TripSettings, edge: Edge, work: Working = silent): number {
  const start = bandStart(settings.ir, edge);
  if (edge === 'fast' ? atMost(current, start) : !atLeast(current, start)) {
    throw outOfRange('current_A', edge === 'fast' ? `no trip up to 1.05 Ir, ${figure(start)} A` : `trip not assured below 1.30 Ir, ${figure(start)} A`);
  }
  const stages = stagesAt(settings, edge);
  const instantaneous = stages.find(({ name }) => name === 'instantaneous');
  if (edge === 'fast' && instantaneous && atLeast(current, instantaneous.from)) {
    throw outOfRange('current_A', `no least time in the instantaneous range, from ${figure(instantaneous.from)} A`);
  }
  for (const stage of stages.filter(({ from }) => atLeast(current, from))) {
    work.step(`t ${stage.name}`, stageFormula(stage), { I: [current, 'A'], 'I²t': [stage.joule, 'A²s'], level: [stage.level, 's'] }, [stageTime(stage, current), 's']);
  }
  const first = firstStage(stages, current);
  const time = stageTime(first, current);
  work.step('t', 'least of the stages reached', { stage: first.name }, [time, 's']);
  return time;
}

const stageFormula = ({ level, joule }: Stage): string => (joule === 0 ? 'level' : level === 0 ? 'I²t/I²' : 'max(level, I²t/I²)');
