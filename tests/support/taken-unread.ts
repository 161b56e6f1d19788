import { catalogueOf } from '../../src/functions/kernel/catalogue';
import type { Argument } from '../../src/functions/kernel/cell';
import { worksheetFunction } from '../../src/functions/kernel/declaration';
import type { Plain } from '../../src/functions/kernel/kind';
import { ratio } from '../../src/functions/kernel/kinds';
import { readArguments } from '../../src/functions/kernel/read-arguments';

/** Whether the reader of arguments takes what it is given without asking the kind of the argument, whose long way tells. */
export function takerOf(plain: Plain): (argument: Argument, blankArrivesAsZero?: boolean) => boolean {
  let readInFull = false;
  const it = { ...ratio('', {}), plain, read: (): number => { readInFull = true; return 1; } };
  const made = worksheetFunction({ name: 'IT', summary: '', formula: '', basis: [], examples: [], parameters: { it }, result: 'ratio', compute: () => 0 });
  const { member } = catalogueOf([[{ family: 'check', ...made }]]).entries[0]!;
  return (argument, blankArrivesAsZero = false) => {
    readInFull = false;
    const { it: taken } = readArguments(member, [argument], blankArrivesAsZero).values;
    if (!readInFull && taken !== argument) throw new Error(`${String(argument)} became ${String(taken)}`);
    return !readInFull;
  };
}
