import { type Outcome, call, plainHost } from '../../functions/kernel/call';
import { type Catalogue, isOurName } from '../../functions/kernel/catalogue';
import type { Argument } from '../../functions/kernel/cell';
import type { Entry } from '../../functions/kernel/declaration';
import type { BookCell } from '../calculate/cells';
import type { CustomFunction, CustomFunctions } from '../evaluate';

/** A call of one of our functions as it went while a cell was worked out. */
export interface ObservedCall {
  readonly cell: BookCell;
  readonly entry: Entry;
  readonly argv: readonly Argument[];
  readonly outcome: Outcome;
}

/** Our functions, with somebody who looks on; nobody does until `cell` is set. */
export class ObservedFunctions implements CustomFunctions {
  private readonly made = new Map<string, CustomFunction>();
  cell: BookCell | undefined;
  onCall: (call: ObservedCall) => void = () => {};

  constructor(private readonly functions: Catalogue) {
    for (const entry of functions.entries) {
      this.made.set(entry.member.name, (argv) => {
        const outcome = call(functions, entry, argv, plainHost);
        if (this.cell) this.onCall({ cell: this.cell, entry, argv, outcome });
        return outcome.value;
      });
    }
  }

  find(name: string): CustomFunction | undefined {
    return isOurName(name) ? this.made.get(this.functions.find(name)?.member.name ?? '') : undefined;
  }
}

/** Value of an argument by name: as the function read it, or as it was handed over where the call was refused. */
export function argumentOf({ entry, argv, outcome }: ObservedCall, name: string): unknown {
  if (outcome.args) return outcome.leftOut.includes(name) ? undefined : outcome.args[name];
  const place = entry.member.order.findIndex(([each]) => each === name);
  const given = place < 0 ? undefined : argv[place];
  return Array.isArray(given) && given.length === 1 && given[0]!.length === 1 ? given[0]![0] : given;
}
