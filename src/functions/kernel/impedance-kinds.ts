import { Complex, complex, complexText, parseComplex } from '../../core/complex';
import { figure } from '../../core/figure';
import { missing, outOfRange, wrongValue } from '../../core/refusal';
import { type Argument, type Cell, isMatrix } from './cell';
import { type CommonOptions, type Kind, type Read, type Reading, kind } from './kind';
import { numberOf } from './number';
import { isBlankCell, neededCell, oneCell, shownCell } from './scalar';

const TAKES = 'takes an impedance in mΩ: complex text such as 1.05+5.68i, a number, text with a unit, or two cells R, X';

export const shownImpedance = (z: Complex): string => `${complexText(complex(Number(figure(z.re)), Number(figure(z.im))))} mΩ`;

function positive(z: Complex, name: string, got: () => string): Complex {
  if (!(z.re >= 0) || !(z.im >= 0)) throw wrongValue(name, `got ${got()}, takes R and X of 0 or more`);
  return z;
}

/** One impedance out of one cell: complex text, a resistance, or text with a unit; mΩ. */
export function impedanceOf(cell: Exclude<Cell, null>, name: string, reading: Reading): Complex {
  if (cell === 0 && reading.blankArrivesAsZero) throw wrongValue(undefined, `${name} is blank or zero: write 0 as text`);
  if (typeof cell === 'number') return positive(complex(numberOf(cell, name, 'mΩ', reading), 0), name, () => figure(cell));
  if (typeof cell !== 'string') throw wrongValue(name, `got ${shownCell(cell)}, ${TAKES}`);
  const z = parseComplex(cell);
  if (z) {
    if (!Number.isFinite(z.re) || !Number.isFinite(z.im)) throw outOfRange(name, `got ${shownCell(cell)}, which is not a finite number`);
    return positive(z, name, () => shownCell(cell));
  }
  if (/[ij]\s*$/.test(cell)) throw wrongValue(name, `got ${shownCell(cell)}, ${TAKES}`);
  return positive(complex(numberOf(cell, name, 'mΩ', reading), 0), name, () => shownCell(cell));
}

/** R and X of two neighbouring cells. */
function pairOf(cells: readonly Cell[], name: string, reading: Reading): Complex {
  const [r, x] = cells.map((cell, i) => {
    const part = `${name} (${i === 0 ? 'R' : 'X'})`;
    const got = neededCell(cell, part);
    if (got === 0 && reading.blankArrivesAsZero) throw wrongValue(undefined, `${part} is blank or zero: write 0 as text`);
    return numberOf(got, part, 'mΩ', reading);
  }) as [number, number];
  return positive(complex(r, x), name, () => `${figure(r)}, ${figure(x)}`);
}

export interface ImpedanceOptions extends CommonOptions<Complex> {
  /** Least size |Z|, mΩ. */
  sizeAtLeast_mohm?: number;
}

/** An impedance: complex text in mΩ, a number (pure R), text with a unit, or a two-cell range R, X. */
export function impedance<const O extends ImpedanceOptions>(about: string, options: O): Kind<Read<Complex, O>> {
  return kind<Complex, O>({
    type: 'impedance', about, options, unit: 'mΩ', zeroIsNotBlank: true,
    read: (argument: Argument, name, reading) => {
      const cells = isMatrix(argument) ? argument.flat() : undefined;
      const z = cells?.length === 2 ? pairOf(cells, name, reading) : impedanceOf(oneCell(argument, name)!, name, reading);
      const least = options.sizeAtLeast_mohm;
      if (least !== undefined && !(z.abs() >= least * (1 - 1e-9))) throw outOfRange(name, `size ${figure(z.abs())} mΩ is below ${least} mΩ`);
      return z;
    },
    show: shownImpedance,
  });
}

/** Impedances, one a cell: one range, or any number of cells and ranges at the end of the list. Blanks at the end of a range are dropped, one inside is missing. */
export function impedances(about: string, shape: 'range' | 'repeating' = 'repeating'): Kind<readonly Complex[]> {
  return kind<readonly Complex[], CommonOptions<readonly Complex[]>>({
    type: 'impedances', shape, about, options: {}, unit: 'mΩ', zeroIsNotBlank: true,
    read: (argument, name, reading) => listOf([argument], name, reading),
    readRest: listOf,
    show: (list) => list.map(shownImpedance).join(', '),
  });
}

function listOf(rest: readonly Argument[], name: string, reading: Reading): readonly Complex[] {
  const list: Complex[] = [];
  for (const argument of rest) {
    const cells: Cell[] = isMatrix(argument) ? argument.flat() : [argument ?? null];
    while (cells.length > 0 && isBlankCell(cells[cells.length - 1])) cells.pop();
    if (cells.length === 0) throw missing(`${name} ${list.length + 1}`);
    for (const cell of cells) {
      const place = `${name} ${list.length + 1}`;
      list.push(impedanceOf(neededCell(cell, place), place, reading));
    }
  }
  if (list.length === 0) throw missing(name);
  return list;
}
