import { parseComplex } from '../../core/complex';
import { call, plainHost } from '../../functions/kernel/call';
import { type Argument, type Cell, CellError, type Matrix } from '../../functions/kernel/cell';
import { catalogue } from '../catalogue';
import type { Published, PublishedArgument, PublishedCall } from './entry';

/** One published figure beside ours. */
export interface Compared {
  readonly entry: Published;
  readonly ours: Cell | Matrix;
  /** Ours less theirs, for figures. */
  readonly difference: number | undefined;
  readonly agrees: boolean;
}

const isCall = (argument: PublishedArgument): argument is PublishedCall => typeof argument === 'object' && argument !== null && 'function' in argument;

function part(value: Cell | Matrix, wanted: string): Cell {
  if (value instanceof CellError) return value;
  const z = typeof value === 'number' || typeof value === 'string' ? parseComplex(String(value)) : undefined;
  if (!z) return new CellError('#VALUE!', 'the result is no complex text');
  return wanted === 're' ? z.re : wanted === 'im' ? z.im : Math.hypot(z.re, z.im);
}

/** What our function gives for a published call. */
export function answer({ function: name, args, part: wanted }: PublishedCall): Cell | Matrix {
  const entry = catalogue.find(name);
  if (!entry) return new CellError('#NAME?', `no function named ${name}`);
  const { value } = call(catalogue, entry, args.map((argument): Argument => (isCall(argument) ? answer(argument) : argument)), plainHost);
  return wanted === undefined ? value : part(value, wanted);
}

/** A hair above the tolerance, for a figure that lies on it exactly. */
const HAIR = 1e-9;

export function compare(entry: Published): Compared {
  const ours = answer(entry);
  const { expected, tolerance = 0 } = entry;
  if (typeof expected === 'string') return { entry, ours, difference: undefined, agrees: ours === expected };
  const difference = typeof ours === 'number' ? ours - expected : undefined;
  return { entry, ours, difference, agrees: difference !== undefined && Math.abs(difference) <= tolerance * (1 + HAIR) };
}
