/**
 * Units that a worksheet may write behind a number, and what they convert to.
 * One table: factors to the first unit of each kind. 1 cal = 4.184 J, 1 in = 25.4 mm, 1 ft = 0.3048 m exactly.
 */
export type UnitKind =
  | 'ratio' | 'voltage' | 'current' | 'impedance' | 'length' | 'area' | 'volume' | 'time' | 'temperature' | 'temperature difference'
  | 'joule integral' | 'power' | 'apparent power' | 'energy per area' | 'force' | 'force per length' | 'frequency'
  | 'impedance per length' | 'stress' | 'adiabatic factor';

interface UnitFacts {
  symbol: string;
  kind: UnitKind;
  factor: number;
  /** Other spellings; case counts, spaces do not. */
  spellings?: readonly string[];
}

const table = [
  { symbol: '1', kind: 'ratio', factor: 1, spellings: ['-'] },
  { symbol: '%', kind: 'ratio', factor: 0.01 },
  { symbol: 'V', kind: 'voltage', factor: 1 },
  { symbol: 'kV', kind: 'voltage', factor: 1000, spellings: ['KV'] },
  { symbol: 'mV', kind: 'voltage', factor: 1e-3 },
  { symbol: 'A', kind: 'current', factor: 1 },
  { symbol: 'kA', kind: 'current', factor: 1000, spellings: ['KA'] },
  { symbol: 'mA', kind: 'current', factor: 1e-3 },
  { symbol: 'mΩ', kind: 'impedance', factor: 1, spellings: ['mohm', 'mohms'] },
  { symbol: 'Ω', kind: 'impedance', factor: 1000, spellings: ['ohm', 'ohms'] },
  { symbol: 'µΩ', kind: 'impedance', factor: 1e-3, spellings: ['uohm', 'uΩ'] },
  { symbol: 'm', kind: 'length', factor: 1 },
  { symbol: 'mm', kind: 'length', factor: 1e-3 },
  { symbol: 'cm', kind: 'length', factor: 1e-2 },
  { symbol: 'km', kind: 'length', factor: 1000 },
  { symbol: 'ft', kind: 'length', factor: 0.3048 },
  { symbol: 'in', kind: 'length', factor: 0.0254 },
  { symbol: 'mm²', kind: 'area', factor: 1 },
  { symbol: 'cm²', kind: 'area', factor: 100 },
  { symbol: 'm²', kind: 'area', factor: 1e6 },
  { symbol: 'mm³', kind: 'volume', factor: 1 },
  { symbol: 's', kind: 'time', factor: 1 },
  { symbol: 'ms', kind: 'time', factor: 1e-3 },
  { symbol: 'min', kind: 'time', factor: 60 },
  { symbol: 'h', kind: 'time', factor: 3600 },
  { symbol: '°C', kind: 'temperature', factor: 1, spellings: ['C', 'degC'] },
  { symbol: 'K', kind: 'temperature difference', factor: 1 },
  { symbol: 'A²s', kind: 'joule integral', factor: 1, spellings: ['A²·s', 'A2·s'] },
  { symbol: 'kA²s', kind: 'joule integral', factor: 1e6, spellings: ['kA²·s', 'kA2·s', 'KA²s'] },
  { symbol: 'W', kind: 'power', factor: 1 },
  { symbol: 'kW', kind: 'power', factor: 1000, spellings: ['KW'] },
  { symbol: 'MW', kind: 'power', factor: 1e6 },
  { symbol: 'VA', kind: 'apparent power', factor: 1 },
  { symbol: 'kVA', kind: 'apparent power', factor: 1000, spellings: ['KVA'] },
  { symbol: 'MVA', kind: 'apparent power', factor: 1e6 },
  { symbol: 'J/cm²', kind: 'energy per area', factor: 1 },
  { symbol: 'cal/cm²', kind: 'energy per area', factor: 4.184 },
  { symbol: 'N', kind: 'force', factor: 1 },
  { symbol: 'kN', kind: 'force', factor: 1000 },
  { symbol: 'N/m', kind: 'force per length', factor: 1 },
  { symbol: 'kN/m', kind: 'force per length', factor: 1000 },
  { symbol: 'Hz', kind: 'frequency', factor: 1 },
  { symbol: 'mΩ/m', kind: 'impedance per length', factor: 1, spellings: ['mohm/m'] },
  { symbol: 'Ω/km', kind: 'impedance per length', factor: 1, spellings: ['ohm/km'] },
  { symbol: 'Ω/m', kind: 'impedance per length', factor: 1000, spellings: ['ohm/m'] },
  { symbol: 'N/mm²', kind: 'stress', factor: 1 },
  { symbol: 'A√s/mm²', kind: 'adiabatic factor', factor: 1, spellings: ['A·√s/mm²', 'A·s½/mm²'] },
] as const satisfies readonly UnitFacts[];

export type Unit = (typeof table)[number]['symbol'];

/** One spelling for marks that have several code points, and for plain digits written as exponents. */
const canonical = (text: string): string =>
  text.replace(/\s/g, '').replace(/\u2126/g, 'Ω').replace(/\u03bc/g, 'µ').replace(/\^?2/g, '²').replace(/\^?3/g, '³');

const bySpelling = new Map<string, UnitFacts>();
for (const unit of table as readonly UnitFacts[]) {
  bySpelling.set(canonical(unit.symbol), unit);
  for (const spelling of unit.spellings ?? []) bySpelling.set(canonical(spelling), unit);
}

/** The unit that a text names, in any of its spellings; case counts. */
export const unitOf = (text: string): Unit | undefined => bySpelling.get(canonical(text))?.symbol as Unit | undefined;

const factsOf = (unit: Unit): UnitFacts => bySpelling.get(canonical(unit))!;

export const kindOf = (unit: Unit): UnitKind => factsOf(unit).kind;

/** Converts between units of one kind; undefined where the kinds differ. */
export function convert(value: number, from: Unit, to: Unit): number | undefined {
  const source = factsOf(from);
  const target = factsOf(to);
  if (source.kind !== target.kind) return undefined;
  // One factor, so that powers of ten stay exact: 9 A is 0.009 kA, not 0.009000000000000001, and 0.35 kA is 350 A, not 349.99999999999994.
  const ratio = source.factor / target.factor;
  return ratio >= 1 ? value * ratio : value / (target.factor / source.factor);
}

/** Unit as it stands behind a figure: nothing for a pure ratio. */
export const unitSuffix = (unit: Unit | undefined): string => (unit === undefined || unit === '1' ? '' : ` ${unit}`);

export const units: readonly Unit[] = table.map((unit) => unit.symbol);
