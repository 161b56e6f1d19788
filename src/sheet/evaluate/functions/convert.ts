import { raise } from '../errors';
import { finite, toNumber, toText } from '../values';
import { BINARY_PREFIXES, PREFIXES, UNITS } from './convert-units';
import { type FunctionTable, cells } from './definition';

/** Temperatures in kelvin: size of a degree and where its zero lies. */
const TEMPERATURES: Readonly<Record<string, readonly [degree: number, zero: number]>> = {
  C: [1, 273.15], cel: [1, 273.15], F: [5 / 9, 459.67 * 5 / 9], fah: [5 / 9, 459.67 * 5 / 9], K: [1, 0], kel: [1, 0], Rank: [5 / 9, 0], Reau: [1.25, 273.15],
};

interface Sized {
  kind: string;
  size: number;
}

function unitOf(text: string): Sized | undefined {
  const unit = UNITS.get(text);
  if (unit) return unit;
  for (const length of [1, 2]) {
    const [prefix, name] = [text.slice(0, length), text.slice(length)];
    const base = UNITS.get(name);
    if (!base) continue;
    if (base.prefixPower > 0 && Object.hasOwn(PREFIXES, prefix)) return { kind: base.kind, size: base.size * PREFIXES[prefix]! ** base.prefixPower };
    if (base.kind === 'information' && Object.hasOwn(BINARY_PREFIXES, prefix)) return { kind: base.kind, size: base.size * BINARY_PREFIXES[prefix]! };
  }
  return undefined;
}

const unknown = (text: string): never => raise('#N/A', `"${text}" is not a unit that CONVERT knows here`);

function convert(value: number, from: string, to: string): number {
  const isTemperature = (text: string): boolean => Object.hasOwn(TEMPERATURES, text);
  if (isTemperature(from) && isTemperature(to)) {
    if (from === to) return value;
    const [[degree, zero], [toDegree, toZero]] = [TEMPERATURES[from]!, TEMPERATURES[to]!];
    // Rounded to what double arithmetic carries, so that 20 °C is 68 °F and not 67.99999999999997.
    return Number(((value * degree + zero - toZero) / toDegree).toPrecision(14));
  }
  const source = isTemperature(from) ? { kind: 'temperature', size: 1 } : unitOf(from) ?? unknown(from);
  const target = isTemperature(to) ? { kind: 'temperature', size: 1 } : unitOf(to) ?? unknown(to);
  if (source.kind !== target.kind) return raise('#N/A', `${from} is ${source.kind}, ${to} is ${target.kind}`);
  return finite((value * source.size) / target.size);
}

export const convertFunctions: FunctionTable = {
  CONVERT: cells([3, 3], (value, from, to) => convert(toNumber(value), toText(from), toText(to))),
};
