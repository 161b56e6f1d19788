import type { SheetPlan } from '../sheet-plan';

/** What the open workbook has already; names are compared in any case. */
export interface Present {
  readonly sheets: readonly string[];
  readonly tables: readonly string[];
  readonly names: readonly string[];
}

/** Sheets to insert, in the order of the starter, and what stands in the way. */
export interface Needed {
  readonly chosen: readonly SheetPlan[];
  /** Sheets that the chosen ones read and that the workbook lacks. */
  readonly alongside: readonly SheetPlan[];
  readonly troubles: readonly string[];
}

const low = (text: string): string => text.toLowerCase();

/** Tables and names that a sheet brings along. */
const bringsOf = ({ tables = [], names = [] }: SheetPlan): string[] => [...tables, ...names].map(({ name }) => low(name));

/** All words of a sheet's formulas and lists outside of texts, in small letters: tables and names are among them. */
function wordsOf({ cells, validations = [] }: SheetPlan): Set<string> {
  const texts = [
    ...cells.flatMap(({ formula }) => (formula === undefined ? [] : [formula.replace(/"[^"]*"/g, ' ').replace(/\[[^\][]*\]/g, ' ')])),
    ...validations.flatMap(({ allows }) => ('listFrom' in allows ? [allows.listFrom] : [])),
  ];
  return new Set(texts.flatMap((text) => text.match(/[A-Za-z_][\w.]*/g) ?? []).map(low));
}

/** The chosen sheets of a starter with all that they read, directly or through another. */
export function neededSheets(starter: readonly SheetPlan[], chosen: readonly string[], present: Present): Needed {
  const bringer = new Map(starter.flatMap((plan) => bringsOf(plan).map((name) => [name, plan] as const)));
  const there = new Set([...present.tables, ...present.names].map(low));
  const wanted = new Set(starter.filter(({ name }) => chosen.includes(name)));
  // A set that grows while it is walked is walked to its end.
  for (const plan of wanted) {
    for (const word of wordsOf(plan)) {
      const from = bringer.get(word);
      if (from && !there.has(word)) wanted.add(from);
    }
  }
  const all = starter.filter((plan) => wanted.has(plan));
  const sheets = new Set(present.sheets.map(low));
  return {
    chosen: all.filter(({ name }) => chosen.includes(name)),
    alongside: all.filter(({ name }) => !chosen.includes(name)),
    troubles: all.flatMap((plan) => {
      if (sheets.has(low(plan.name))) return [`A sheet named ${plan.name} is there already${chosen.includes(plan.name) ? '' : `, without what the others read of it`}. Rename it first, or use it as it is.`];
      const taken = [...(plan.tables ?? []), ...(plan.names ?? [])].find(({ name }) => there.has(low(name)));
      return taken ? [`${taken.name}, which the sheet ${plan.name} brings, is defined in this workbook already.`] : [];
    }),
  };
}
