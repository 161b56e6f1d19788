import { type HostTraits, call } from '../functions/kernel/call';
import type { Entry } from '../functions/kernel/declaration';
import { catalogue } from '../sheet/catalogue';
import { argumentsOf } from './from-excel';
import { type ExcelErrors, toExcel } from './to-excel';

/** The bundle that Excel loads for its cells: every function of the catalogue, associated with its id in functions.json. */

interface Runtime extends ExcelErrors {
  associate(id: string, implementation: (...handed: unknown[]) => unknown): void;
}
declare const CustomFunctions: Runtime;

const excel: HostTraits = { blankArrivesAsZero: true };

const implementation = (entry: Entry) => (...handed: unknown[]): unknown => {
  const { value } = call(catalogue, entry, argumentsOf(entry.member, handed), excel);
  return toExcel(value, CustomFunctions, entry.member.spill);
};

for (const entry of catalogue.entries) CustomFunctions.associate(entry.member.name, implementation(entry));
