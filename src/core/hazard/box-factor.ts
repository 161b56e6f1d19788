import { figure } from '../figure';
import { atLeast } from '../judgement';
import { outOfRange } from '../refusal';
import { type BoxedElectrodes, type Electrodes, inOpenAir } from '../standards/arc-electrodes';
import { enclosureCoefficients, enclosureSizes, equivalentInches, equivalentSizeConstants, inchesPerMillimetre } from '../standards/arc-enclosure';
import { type Working, silent } from '../working';
import { polynomial } from './polynomial';

/** Inside dimensions of the opening and depth of an enclosure, mm. */
export interface Enclosure {
  readonly width: number;
  readonly height: number;
  readonly depth: number;
}

/** Factors that the energy takes. The quadratics of small shallow boxes leave it, and even change sign, which means nothing. */
export const boxFactorRange = { least: 0.3, greatest: 3 } as const;

const isShallow = ({ width, height, depth }: Enclosure, volts: number): boolean =>
  volts < 600 && width < enclosureSizes.small && height < enclosureSizes.small && depth <= enclosureSizes.shallowDepth;

/** Equivalent size of a width or height, inches; dimensions past the tested ones count as those, as the standard says. */
function equivalentSize(dimension: number, shallow: boolean, electrodes: BoxedElectrodes, kilovolts: number, isHeight: boolean): number {
  const { small, wide, widest } = enclosureSizes;
  if (dimension < small && !shallow) return equivalentInches.small;
  if (isHeight && electrodes === 'VCB') return Math.min(inchesPerMillimetre * dimension, equivalentInches.tallest);
  if (dimension <= wide) return inchesPerMillimetre * dimension;
  const { a, b } = equivalentSizeConstants[electrodes];
  return (wide + ((Math.min(dimension, widest) - wide) * (kilovolts + a)) / b) / 25.4;
}

/**
 * Correction of the arc energy for the size of the enclosure; 1 in open air.
 * Source: IEEE 1584-2018, 4.8 (from memory).
 * @param gap   gap between the electrodes, mm; the box must be four gaps wide
 * @param volts voltage between lines, V
 * @returns factor CF, by which the energy is divided
 */
export function boxFactor(box: Enclosure, gap: number, electrodes: Electrodes, volts: number, work: Working = silent): number {
  if (inOpenAir(electrodes)) return 1;
  if (!atLeast(box.width, 4 * gap)) throw outOfRange('width_mm', `${figure(box.width)} is below four gaps, ${figure(4 * gap)} mm`);
  const shallow = isShallow(box, volts);
  const size = (dimension: number, isHeight: boolean): number => equivalentSize(dimension, shallow, electrodes, volts / 1000, isHeight);
  const [width, height] = [size(box.width, false), size(box.height, true)];
  const mean = (width + height) / 2;
  work.step('EES', '(W1 + H1)/2', { W1: [width, 'in'], H1: [height, 'in'] }, [mean, 'in']);
  const quadratic = polynomial(enclosureCoefficients[shallow ? 'shallow' : 'typical'][electrodes], mean);
  const factor = shallow ? 1 / quadratic : quadratic;
  const { least, greatest } = boxFactorRange;
  if (!(factor >= least && factor <= greatest)) throw outOfRange(undefined, `the enclosure is too small for the correction: its factor is outside ${least} to ${greatest}`);
  const terms = 'b1·EES² + b2·EES + b3';
  work.step('CF', shallow ? `1/(${terms})` : terms, { EES: [mean, 'in'], enclosure: shallow ? 'shallow' : 'typical', electrodes }, factor);
  return factor;
}
