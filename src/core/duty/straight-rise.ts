import { figure } from '../figure';
import { atMost } from '../judgement';
import { outOfRange } from '../refusal';
import { type Working, silent } from '../working';

/** What a fuse link has reached when it begins to arc. */
export interface StraightRise {
  /** Current at the start of the arc, the cut-off peak, kA. */
  readonly peak: number;
  /** Pre-arcing time, ms. */
  readonly time: number;
}

/**
 * Cut-off peak and pre-arcing time of a fuse link, taking the current to rise straight at the steepest slope of an inductive
 * fault, √2·ω·I, until ∫i²dt is the pre-arcing joule integral. At or above the true current at the start of the arc.
 * Holds while ω·t is at most 1: beyond, the straight line passes the crest √2·I and the link does not limit the first peak.
 * Source: physics; an estimate.
 * @param prearcing pre-arcing joule integral, A²s
 * @param fault     prospective r.m.s. current, kA
 * @param hertz     frequency, Hz
 */
export function straightRise(prearcing: number, fault: number, hertz: number, work: Working = silent): StraightRise {
  const slope = Math.SQRT2 * 2 * Math.PI * hertz * 1000 * fault;
  const peak = Math.cbrt(3 * slope * prearcing);
  if (!atMost(peak, Math.SQRT2 * 1000 * fault)) throw outOfRange('fault_kA', `at ${figure(fault)} kA the link does not limit the first peak`);
  const time = peak / slope;
  work.step('î', '(3·√2·ω·I²t·I)^⅓', { 'I²t': [prearcing, 'A²s'], I: [fault, 'kA'], f: [hertz, 'Hz'] }, [peak / 1000, 'kA']);
  work.step('t', 'î/(√2·ω·I)', { î: [peak / 1000, 'kA'], I: [fault, 'kA'], f: [hertz, 'Hz'] }, [time * 1000, 'ms']);
  return { peak: peak / 1000, time: time * 1000 };
}

/**
 * Current at which a link melts in a short time, no heat leaving.
 * Source: adiabatic pre-arcing, IEC 60269-1 (from memory).
 * @param prearcing pre-arcing joule integral, A²s
 * @param time      pre-arcing time, ms, up to 10
 * @returns r.m.s. current, kA
 */
export function prearcingCurrent(prearcing: number, time: number, work: Working = silent): number {
  const current = Math.sqrt(prearcing / (time / 1000)) / 1000;
  work.step('I', '√(I²t/t)', { 'I²t': [prearcing, 'A²s'], t: [time, 'ms'] }, [current, 'kA']);
  return current;
}
