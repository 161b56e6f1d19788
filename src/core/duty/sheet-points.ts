import { type CurvePoints, logLogAt } from '../curve/interpolate';
import { figure } from '../figure';
import { atLeast, atMost } from '../judgement';
import { outOfRange } from '../refusal';
import type { Unit } from '../units';
import { type Working, silent } from '../working';

/**
 * What a limiting device lets through, from the points of its sheet: peak or joule integral against the prospective current.
 * Straight on log-log between the points, nothing outside. A sheet counts only for a network of its own voltage or a lower one.
 * @param points       prospective r.m.s. current, kA, rising; peak kA, or A²s
 * @param fault        prospective r.m.s. current at the place, kA
 * @param sheetVoltage voltage for which the sheet stands, V
 * @param network      voltage of the network, V
 * @returns peak kA, or A²s, as the points are
 */
export function readFromSheet(points: CurvePoints, unit: Unit, fault: number, sheetVoltage: number, network: number, work: Working = silent): number {
  if (!atLeast(sheetVoltage, network)) throw outOfRange('sheet_V', `${figure(sheetVoltage)} V is below the network ${figure(network)} V`);
  const value = logLogAt(points, fault);
  if (value === undefined) {
    const [first, last] = [points.x[0]!, points.x[points.x.length - 1]!];
    throw outOfRange('fault_kA', `${figure(fault)} is outside the sheet, ${figure(first)} to ${figure(last)} kA`);
  }
  work.step(unit === 'A²s' ? 'I²t' : 'î', 'sheet at Ik, log-log', { Ik: [fault, 'kA'] }, [value, unit]);
  return value;
}

/** A sheet for more than this multiple of the network voltage reads high enough to say so. */
const READS_HIGH_ABOVE = 1.1;

export const sheetReadsHigh = (sheetVoltage: number, network: number): boolean => !atMost(sheetVoltage, READS_HIGH_ABOVE * network);
