import { Recorder } from '../../src/core/working';
import { type HostTraits, call } from '../../src/functions/kernel/call';
import { type Argument, CellError } from '../../src/functions/kernel/cell';
import type { Entry } from '../../src/functions/kernel/declaration';
import { catalogue } from '../../src/sheet/catalogue';
import { randomFrom } from './hostile';
import { exampleArguments, tuple } from './hostile-tuples';
import { faultOfValue, faultOfWords } from './sound-outcome';

export const FUZZ_SEED = 20261125;

const hosts: readonly HostTraits[] = [{ blankArrivesAsZero: false }, { blankArrivesAsZero: true }];
const MOST_FAULTS = 5;

function shownArguments(argv: readonly Argument[]): string {
  const plain = (value: unknown): unknown => (typeof value === 'number' ? (Object.is(value, -0) ? '-0' : Number.isFinite(value) ? value : String(value)) : value instanceof CellError ? value.code : typeof value === 'string' && value.length > 60 ? `${value.slice(0, 20)}… (${value.length})` : value);
  return JSON.stringify(argv, (_key, value: unknown) => (value === undefined ? '(left out)' : plain(value))).slice(0, 600);
}

export interface Fuzzed {
  readonly called: number;
  readonly refused: number;
  /** Calls that answered something else than they may, in words; the first few. */
  readonly faults: readonly string[];
}

/** Calls one function with so many hostile tuples. The seed and the function alone decide which, so a fault comes again. */
export function fuzz(entry: Entry, tuples: number, seed: number): Fuzzed {
  const random = randomFrom(seed + 7919 * catalogue.entries.indexOf(entry));
  const examples = exampleArguments(entry);
  const faults: string[] = [];
  let [called, refused] = [0, 0];
  while (called < tuples && faults.length < MOST_FAULTS) {
    const argv = tuple(entry, examples, random);
    const outcome = call(catalogue, entry, argv, hosts[random() < 0.3 ? 1 : 0], new Recorder());
    called += 1;
    if (outcome.error) refused += 1;
    const fault = faultOfValue(outcome.value, entry, argv) ?? faultOfWords(outcome);
    if (fault) faults.push(`call ${called}: ${entry.member.name}(${shownArguments(argv)}) gave ${fault}`);
  }
  return { called, refused, faults };
}
