import { figure, rounded } from '../figure';
import { atLeast } from '../judgement';
import { outOfRange } from '../refusal';
import { listedSizes } from '../standards/conductor-resistance';
import { type Working, silent } from '../working';

/**
 * Least conductor section for a joule integral, adiabatic.
 * Source: IEC 60364-5-54:2011, 543.1.2; IEC 60364-4-43:2023, 434.5.2.
 * @param joule joule integral, A²s
 * @param k     adiabatic factor, A√s/mm²
 * @param runs  conductors in parallel that share evenly
 * @returns cross-section of each, mm², not rounded
 */
export function leastSection(joule: number, k: number, runs: number, work: Working = silent): number {
  const section = Math.sqrt(joule) / (k * runs);
  work.step('S', '√(I²t)/(k·n)', { 'I²t': [joule, 'A²s'], k: [k, 'A√s/mm²'], n: runs }, [section, 'mm²']);
  return section;
}

/** The next listed size from a section up, mm². Source: IEC 60228:2023. */
export function nextListedSize(section: number, work: Working = silent): number {
  const sizes = listedSizes.copper;
  const size = sizes.find((listed) => atLeast(listed, section));
  if (size === undefined) throw outOfRange('joule_A2s', `needs ${rounded(section)} mm², above the largest listed size, ${figure(sizes[sizes.length - 1]!)} mm²`);
  work.step('S listed', 'next size up', { S: [section, 'mm²'] }, [size, 'mm²']);
  return size;
}
