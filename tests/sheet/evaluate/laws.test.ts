import fc from 'fast-check';
import { type Cell, CellError, type Matrix } from '../../../src/functions/kernel/cell';
import { applyOperator, callFunction, compile, emptyWorkbook, evaluate } from '../../../src/sheet/evaluate';
import { SmallWorkbook, run } from './sheet';

const number = fc.oneof(fc.integer({ min: -1000, max: 1000 }), fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e15, max: 1e15 }));
const text = fc.oneof(fc.string({ maxLength: 6 }), fc.constantFrom('', 'a', 'A', '5', ' 12 ', '50%', '1,000', 'TRUE', '2025-01-15', '-3e2'));
const cell: fc.Arbitrary<Cell> = fc.oneof(number, text, fc.boolean(), fc.constant(null), fc.constantFrom(new CellError('#N/A'), new CellError('#VALUE!')));
const sound: fc.Arbitrary<Exclude<Cell, CellError | null>> = fc.oneof(number, text, fc.boolean());

const plain = (value: Cell | Matrix): unknown => (value instanceof CellError ? value.code : value);

/** Every cell that may leave the evaluator. */
function isFit(value: Cell | Matrix): boolean {
  if (Array.isArray(value)) return value.length > 0 && value.every((row) => row.length === value[0]!.length && row.every(isFit));
  if (typeof value === 'number') return Number.isFinite(value) && !Object.is(value, -0);
  return typeof value === 'string' || typeof value === 'boolean' || value instanceof CellError;
}

describe('operators', () => {
  it('+ and * do not ask which comes first, whatever the cells', () => {
    fc.assert(fc.property(cell, cell, (a, b) => {
      for (const operator of ['+', '*']) {
        const [forth, back] = [applyOperator(operator, a, b), applyOperator(operator, b, a)];
        // Of two faults the left one is named.
        if (forth instanceof CellError) expect(back).toBeInstanceOf(CellError);
        else expect(back).toBe(forth);
      }
    }));
  });

  it('never give NaN, infinity, -0 or a blank', () => {
    fc.assert(fc.property(fc.constantFrom('+', '-', '*', '/', '^', '&', '=', '<>', '<', '>', '<=', '>='), cell, cell, (operator, a, b) => isFit(applyOperator(operator, a, b))));
  });

  it('a number survives being written to text, to 15 digits', () => {
    fc.assert(fc.property(number, (x) => {
      const back = applyOperator('+', applyOperator('&', x, '') as Cell, 0) as number;
      expect(back).toBe(Number(x.toPrecision(15)) + 0);
    }));
  });
});

describe('comparison is an order', () => {
  const order = (a: Cell, b: Cell): number => (applyOperator('<', a, b) === true ? -1 : applyOperator('>', a, b) === true ? 1 : 0);

  it('of which exactly one of <, =, > holds, and the other way round when turned', () => {
    fc.assert(fc.property(sound, sound, (a, b) => {
      expect(['<', '=', '>'].filter((operator) => applyOperator(operator, a, b) === true)).toHaveLength(1);
      expect(order(a, b) + order(b, a)).toBe(0);
      expect(applyOperator('<=', a, b)).toBe(order(a, b) <= 0);
      expect(applyOperator('<>', a, b)).toBe(order(a, b) !== 0);
    }));
  });

  it('that carries over three cells, near numbers included', () => {
    const near = fc.tuple(number, fc.integer({ min: -40, max: 40 })).map(([x, steps]) => x * (1 + steps * 2 ** -52));
    fc.assert(fc.property(fc.oneof(sound, near), fc.oneof(sound, near), fc.oneof(sound, near), (a, b, c) => {
      const [low, middle, high] = [a, b, c].sort(order) as [Cell, Cell, Cell];
      expect(order(low, middle)).toBeLessThanOrEqual(0);
      expect(order(middle, high)).toBeLessThanOrEqual(0);
      expect(order(low, high)).toBeLessThanOrEqual(0);
    }));
  });
});

/** Half away from zero on the decimal figure itself: digits as a whole number, so many of them decimals. */
function decimalRound(digits: bigint, decimals: number, to: number): string {
  if (to >= decimals) return `${digits}e-${decimals}`;
  const step = 10n ** BigInt(decimals - to);
  const size = digits < 0n ? -digits : digits;
  const rounded = (size + step / 2n) / step;
  return `${digits < 0n ? '-' : ''}${rounded}e${-to}`;
}

describe('rounding', () => {
  const figure = fc.record({ digits: fc.bigInt({ min: -999_999_999_999n, max: 999_999_999_999n }), decimals: fc.integer({ min: 0, max: 10 }), to: fc.integer({ min: -3, max: 10 }) });

  it('is that of the decimal figure, half away from zero', () => {
    fc.assert(fc.property(figure, ({ digits, decimals, to }) => {
      expect(callFunction('ROUND', [Number(`${digits}e-${decimals}`), to])).toBe(Number(decimalRound(digits, decimals, to)) + 0);
    }), { numRuns: 500 });
  });

  it('lies between down and up, and they lie a step apart at most', () => {
    fc.assert(fc.property(figure, ({ digits, decimals, to }) => {
      const x = Number(`${digits}e-${decimals}`);
      const [down, nearest, up] = ['ROUNDDOWN', 'ROUND', 'ROUNDUP'].map((name) => Math.abs(callFunction(name, [x, to]) as number)) as [number, number, number];
      expect(nearest === down || nearest === up).toBe(true);
      // A step of 10⁻⁴ and its double differ in the last binary place.
      expect(up - down).toBeLessThanOrEqual(10 ** -to * (1 + 1e-15) + Math.abs(x) * 2e-15);
    }));
  });
});

describe('looking up', () => {
  const list = fc.array(fc.integer({ min: 0, max: 30 }), { minLength: 1, maxLength: 20 });
  const column = (values: Cell[]): Matrix => values.map((value) => [value]);
  const position = (index: number): unknown => (index < 0 ? '#N/A' : index + 1);

  it('MATCH and XMATCH find what a walk along the list finds', () => {
    fc.assert(fc.property(list, fc.integer({ min: -1, max: 31 }), (values, wanted) => {
      const first = position(values.indexOf(wanted));
      expect(plain(callFunction('MATCH', [wanted, column(values), 0])!)).toBe(first);
      expect(plain(callFunction('XMATCH', [wanted, column(values)])!)).toBe(first);
      expect(plain(callFunction('XMATCH', [wanted, column(values), 0, -1])!)).toBe(position(values.lastIndexOf(wanted)));
    }));
  });

  it('in sorted lists too: the last not above, or not below', () => {
    fc.assert(fc.property(list, fc.integer({ min: -1, max: 31 }), (values, wanted) => {
      const rising = [...values].sort((a, b) => a - b);
      const falling = [...rising].reverse();
      expect(plain(callFunction('MATCH', [wanted, column(rising), 1])!)).toBe(position(rising.findLastIndex((x) => x <= wanted)));
      const exact = falling.indexOf(wanted);
      expect(plain(callFunction('MATCH', [wanted, column(falling), -1])!)).toBe(position(exact >= 0 ? exact : falling.findLastIndex((x) => x >= wanted)));
      const below = rising.filter((x) => x <= wanted).at(-1);
      expect(plain(callFunction('XLOOKUP', [wanted, column(values), column(values), 'none', -1])!)).toBe(below ?? 'none');
    }));
  });

  it('wildcards match what the same pattern matches letter by letter', () => {
    const letters = fc.string({ unit: fc.constantFrom('a', 'b', 'B'), maxLength: 8 });
    const pattern = fc.string({ unit: fc.constantFrom('a', 'b', '*', '?'), maxLength: 6 });
    fc.assert(fc.property(letters, pattern, (word, wild) => {
      const source = [...wild].map((sign) => (sign === '*' ? '.*' : sign === '?' ? '.' : sign)).join('');
      const matches = new RegExp(`^${source}$`, 'i').test(word);
      if (wild !== '') expect(callFunction('COUNTIF', [[[word]], wild])).toBe(matches ? 1 : 0);
      const at = word.search(new RegExp(source.replaceAll('.*', '.*?'), 'i'));
      expect(plain(callFunction('SEARCH', [wild, word])!)).toBe(at < 0 ? '#VALUE!' : at + 1);
    }), { numRuns: 500 });
  });
});

describe('sorting and counting', () => {
  const cells = fc.array(fc.oneof(fc.integer({ min: 0, max: 9 }), fc.constantFrom('a', 'B', 'c'), fc.boolean()), { minLength: 2, maxLength: 15 });

  it('SORT loses nothing and rises; turned round it falls', () => {
    fc.assert(fc.property(cells, (values) => {
      const sorted = (callFunction('SORT', [values.map((value) => [value])]) as Matrix).flat();
      expect([...sorted].map(String).sort()).toEqual(values.map(String).sort());
      for (let place = 1; place < sorted.length; place++) expect(applyOperator('<=', sorted[place - 1]!, sorted[place]!)).toBe(true);
      const falling = (callFunction('SORT', [values.map((value) => [value]), 1, -1]) as Matrix).flat();
      for (let place = 1; place < falling.length; place++) expect(applyOperator('>=', falling[place - 1]!, falling[place]!)).toBe(true);
    }));
  });

  it('SUMIF over the different values adds up to the whole', () => {
    fc.assert(fc.property(fc.array(fc.integer({ min: 0, max: 5 }), { minLength: 1, maxLength: 20 }), (values) => {
      const column = values.map((value) => [value]);
      const parts = [...new Set(values)].map((value) => callFunction('SUMIF', [column, value]) as number);
      expect(parts.reduce((sum, part) => sum + part, 0)).toBe(values.reduce((sum, value) => sum + value, 0));
    }));
  });
});

describe('complex text', () => {
  const part = fc.integer({ min: -9999, max: 9999 }).map((digits) => digits / 100);

  it('reads back what it writes, and its sum and product are those of the parts', () => {
    fc.assert(fc.property(part, part, part, part, (a, b, c, d) => {
      const [z, w] = [callFunction('COMPLEX', [a, b]) as string, callFunction('COMPLEX', [c, d]) as string];
      expect([callFunction('IMREAL', [z]), callFunction('IMAGINARY', [z])]).toEqual([a + 0, b + 0]);
      expect(callFunction('IMREAL', [callFunction('IMSUM', [z, w]) as string])).toBeCloseTo(a + c, 8);
      expect(callFunction('IMAGINARY', [callFunction('IMPRODUCT', [z, w]) as string])).toBeCloseTo(a * d + b * c, 6);
    }));
  });
});

describe('dates', () => {
  it('year, month and day of a serial number make the same number again', () => {
    fc.assert(fc.property(fc.integer({ min: 1, max: 2958465 }).filter((serial) => serial !== 60), (serial) => {
      expect(run(`DATE(YEAR(${serial}),MONTH(${serial}),DAY(${serial}))`)).toBe(serial);
    }));
  });

  it('agree with the calendar of the machine', () => {
    fc.assert(fc.property(fc.integer({ min: 1901, max: 9998 }), fc.integer({ min: 0, max: 364 }), (year, offset) => {
      const date = new Date(Date.UTC(year, 0, 1 + offset));
      const serial = date.getTime() / 86_400_000 + 25569;
      expect(callFunction('DATE', [year, 1, 1 + offset])).toBe(serial);
      expect(callFunction('WEEKDAY', [serial])).toBe(date.getUTCDay() + 1);
      expect(callFunction('EOMONTH', [serial, 0])).toBe(Date.UTC(date.getUTCFullYear(), date.getUTCMonth() + 1, 0) / 86_400_000 + 25569);
    }));
  });
});

describe('whatever is typed', () => {
  const pieces = fc.constantFrom('A1', 'B2:C3', '1', '2.5', '"x"', '+', '-', '*', '/', '^', '&', '=', '<', '(', ')', ',', '{1,2}', 'SUM(', 'IF(', 'INDEX(', 'LET(x,', 'x', '%', '@', '#', ' ', 'TRUE', '#N/A', 'LAMBDA(x,', ';', '"', "'", '!');

  it('comes to a cell or rows of cells fit to be shown', () => {
    const workbook = new SmallWorkbook({ A1: 1, B2: 'b', C3: true });
    fc.assert(fc.property(fc.array(pieces, { minLength: 1, maxLength: 12 }), fc.boolean(), (parts, oneCell) => isFit(run(parts.join(''), workbook, { oneCell }))), { numRuns: 3000 });
  });

  it('as does any text at all', () => {
    const context = { workbook: emptyWorkbook, functions: { find: () => undefined }, sheet: '', row: 0, column: 0 };
    fc.assert(fc.property(fc.string({ maxLength: 40 }), (formula) => isFit(evaluate(compile(formula), context))), { numRuns: 1000 });
  });
});
