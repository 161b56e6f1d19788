import type { Argument, Cell, Matrix } from '../../src/functions/kernel/cell';
import { type HostTraits, type Outcome, call, plainHost } from '../../src/functions/kernel/call';
import { Recorder } from '../../src/core/working';
import { catalogue } from '../../src/sheet/catalogue';

/** Calls a worksheet function as a host does and gives all that is known of the call. */
export function outcomeOf(name: string, argv: readonly Argument[], traits: HostTraits = plainHost): Outcome {
  const entry = catalogue.find(name);
  if (!entry) throw new Error(`no function named ${name}`);
  return call(catalogue, entry, argv, traits, new Recorder());
}

/** What the cell shows. */
export const run = (name: string, ...argv: Argument[]): Cell | Matrix => outcomeOf(name, argv).value;
