import fc from 'fast-check';
import { CellError, type Argument, type Matrix } from '../../src/functions/kernel/cell';
import { between, currentInside, fallingCurve, releases } from '../support/curves';
import { answersSoundly, namesOf } from '../support/hostile-calls';
import { run } from '../support/run';

const share = between(0, 1);
const tolerance = between(0, 50);
const edges = ['slow', 'mean', 'fast'] as const;
const FACTOR = { slow: 1, mean: 0, fast: -1 };
const factorOf = (edge: (typeof edges)[number], pct: number): number => 1 + (FACTOR[edge] * pct) / 100;
const number = (value: unknown): number => {
  expect(typeof value).toBe('number');
  return value as number;
};
const near = (a: number, b: number, part = 1e-9) => expect(Math.abs(a - b)).toBeLessThanOrEqual(part * Math.max(Math.abs(a), Math.abs(b)));
/** A hair of rounding is no fall. */
const notLess = (a: number, b: number) => expect(a).toBeGreaterThanOrEqual(b * (1 - 1e-9));

describe('curves from points', () => {
  test('slow is never faster than mean, nor mean than fast', () => {
    fc.assert(fc.property(fallingCurve({ steps: true }), between(0, 20), share, (curve, pct, place) => {
      const current = currentInside(curve, place);
      const times = edges.map((edge) => run('CURVE_TIME', curve, current, pct, edge));
      const [slow, mean, fast] = times;
      number(mean);
      if (typeof slow === 'number') notLess(slow, mean as number);
      if (typeof fast === 'number') notLess(mean as number, fast);
    }));
  });
  test('an edge is the mean curve moved in current', () => {
    fc.assert(fc.property(fallingCurve(), tolerance, share, fc.constantFrom(...edges), (curve, pct, place, edge) => {
      const current = currentInside(curve, place, factorOf(edge, pct));
      near(number(run('CURVE_TIME', curve, current, pct, edge)), number(run('CURVE_TIME', curve, current / factorOf(edge, pct), 0, 'mean')));
    }));
  });
  test('a device is never slower at a higher current', () => {
    fc.assert(fc.property(fallingCurve({ steps: true }), tolerance, share, share, fc.constantFrom(...edges), (curve, pct, a, b, edge) => {
      const [low, high] = [Math.min(a, b), Math.max(a, b)].map((place) => number(run('CURVE_TIME', curve, currentInside(curve, place, factorOf(edge, pct)), pct, edge)));
      notLess(low!, high!);
    }));
  });
  test('CURVE_CURRENT inverts CURVE_TIME', () => {
    fc.assert(fc.property(fallingCurve(), tolerance, share, fc.constantFrom(...edges), (curve, pct, place, edge) => {
      const current = currentInside(curve, place, factorOf(edge, pct));
      const time = number(run('CURVE_TIME', curve, current, pct, edge));
      near(number(run('CURVE_CURRENT', curve, time, pct, edge)), current, 1e-7);
      near(number(run('CURVE_TIME', curve, run('CURVE_CURRENT', curve, time, pct, edge), pct, edge)), time, 1e-6);
    }));
  });
  test('CURVE_CURRENT gives the least current: there the time is reached, just below it is not', () => {
    fc.assert(fc.property(fallingCurve({ steps: true }), share, (curve, place) => {
      const [longest, shortest] = [curve[0]![1] as number, curve[curve.length - 1]![1] as number];
      const time = longest * (shortest / longest) ** place;
      const current = number(run('CURVE_CURRENT', curve, time, 0, 'fast'));
      notLess(time * (1 + 1e-6), number(run('CURVE_TIME', curve, current, 0, 'fast')));
      const below = run('CURVE_TIME', curve, current * (1 - 1e-6), 0, 'fast');
      if (typeof below === 'number') expect(below).toBeGreaterThan(time * (1 - 1e-12));
    }));
  });
  test('a further point on the line changes nothing', () => {
    fc.assert(fc.property(fallingCurve(), share, share, (curve, extra, place) => {
      const x = currentInside(curve, extra);
      const more: Matrix = [...curve, [x, number(run('CURVE_TIME', curve, x, 0, 'mean'))]].sort((p, q) => (p[0] as number) - (q[0] as number));
      fc.pre(more.every((row, i) => i === 0 || (row[0] as number) > (more[i - 1]![0] as number) * (1 + 1e-6)));
      fc.pre(more.every((row, i) => i === 0 || (row[1] as number) <= (more[i - 1]![1] as number)));
      const current = currentInside(curve, place);
      near(number(run('CURVE_TIME', more, current, 0, 'mean')), number(run('CURVE_TIME', curve, current, 0, 'mean')), 1e-6);
    }));
  });
  test('nothing is read outside the edge', () => {
    fc.assert(fc.property(fallingCurve({ steps: true }), tolerance, between(1e-6, 3), fc.constantFrom(...edges), (curve, pct, beyond, edge) => {
      const factor = factorOf(edge, pct);
      for (const current of [currentInside(curve, 0, factor) / (1 + beyond), currentInside(curve, 1, factor) * (1 + beyond)]) {
        expect(run('CURVE_TIME', curve, Math.min(current, 3e5), pct, edge)).toMatchObject({ code: '#NUM!' });
      }
    }));
  });
  test('"1.2 kA" and 1200 are one current; a heading row changes nothing; numbers as text count', () => {
    fc.assert(fc.property(fallingCurve(), share, (curve, place) => {
      const current = currentInside(curve, place);
      const time = number(run('CURVE_TIME', curve, current, 0, 'mean'));
      near(number(run('CURVE_TIME', [['current', 'time'], ...curve], `${current / 1000} kA`, '0 %', 'MEAN')), time);
      expect(run('CURVE_TIME', curve.map((row) => row.map(String)), current, 0, 'mean')).toBe(time);
    }));
  });
  test('what CURVE_CHECK lets pass can be read, and what cannot be read it names', () => {
    const cell = fc.oneof(fc.constantFrom<string | number | null>(null, '', 'x', 0, -5, '7'), between(1, 1000));
    const rows = fc.array(fc.tuple(cell, cell), { minLength: 4, maxLength: 7 }).map((list) => list.map((row) => [...row]));
    fc.assert(fc.property(fc.oneof(rows, fallingCurve({ steps: true })), (matrix) => {
      const findings = run('CURVE_CHECK', matrix as Matrix);
      const read = run('CURVE_CURRENT', matrix as Matrix, 1, 0, 'mean');
      const unreadable = read instanceof CellError && read.code !== '#NUM!';
      if (unreadable) expect(findings).not.toBe('no findings');
      if (findings === 'no findings') expect(unreadable).toBe(false);
    }));
  });
});

describe('trip law', () => {
  const callTime = (current: number, { stages, options }: { stages: Argument[]; options: Argument[] }, edge: string) => run('TRIP_TIME', current, ...stages, edge, ...options);

  test('slow is never faster than mean, nor mean than fast; never slower at a higher current', () => {
    fc.assert(fc.property(releases, between(1.31, 60), between(1.01, 5), (release, times, more) => {
      const at = (current: number) => edges.map((edge) => callTime(current, release, edge));
      const [here, there] = [at(release.ir * times), at(release.ir * times * more)];
      for (const [slow, mean, fast] of [here, there]) {
        notLess(number(slow), number(mean));
        if (typeof fast === 'number') notLess(mean as number, fast);
      }
      here.forEach((time, i) => {
        if (typeof time === 'number' && typeof there[i] === 'number') notLess(time, there[i] as number);
      });
    }));
  });
  test("TRIP_BAND's columns, read as points with tolerance 0, reproduce TRIP_TIME on log-log", () => {
    let compared = 0;
    fc.assert(fc.property(releases, between(20, 100), share, (release, times, place) => {
      const band = run('TRIP_BAND', (release.ir * times) / 1000, ...release.stages, ...release.options, false) as Matrix;
      for (const [edge, column] of [['fast', 0], ['slow', 2]] as const) {
        const points = band.map((row) => row.slice(column, column + 2)).filter((row) => row[0] !== '');
        if (points.length === 0) continue;
        const current = currentInside(points, place);
        // At the very current of a step a slow curve reads the upper time and a stage counts as reached; beside it they agree.
        if (points.some((row) => Math.abs((row[0] as number) / current - 1) < 1e-6)) continue;
        near(number(run('CURVE_TIME', points, current, 0, edge)), number(callTime(current, release, edge)));
        compared += 1;
      }
    }));
    expect(compared).toBeGreaterThan(100);
  });
  test('the band stands in order: times never rise along an edge, the fast edge begins at 1.05 Ir, the slow at 1.30 Ir', () => {
    fc.assert(fc.property(releases, between(2, 100), (release, times) => {
      const band = run('TRIP_BAND', (release.ir * times) / 1000, ...release.stages, ...release.options, false) as Matrix;
      near(number(band[0]![2]), 1.3 * release.ir);
      if (band[0]![0] !== '') near(number(band[0]![0]), 1.05 * release.ir);
      for (const column of [0, 2]) {
        const points = band.map((row) => row.slice(column, column + 2)).filter((row) => row[0] !== '') as number[][];
        points.slice(1).forEach(([x, y], i) => {
          expect(x).toBeGreaterThanOrEqual(points[i]![0]!);
          expect(y).toBeLessThanOrEqual(points[i]![1]!);
        });
      }
    }));
  });
  test('all currents scaled alike: the times stay', () => {
    fc.assert(fc.property(releases, between(1.31, 50), between(0.5, 3), (release, times, scale) => {
      const scaled = (values: Argument[], places: number[]) => values.map((value, i) => (places.includes(i) && typeof value === 'number' ? value * scale : value));
      const other = { stages: scaled(release.stages, [0, 2, 4]), options: scaled(release.options, [2]) };
      fc.pre((other.stages[0] as number) <= 10000);
      const [a, b] = [callTime(release.ir * times, release, 'slow'), callTime(release.ir * times * scale, other, 'slow')];
      near(number(a), number(b), 1e-6);
    }));
  });
  test('wider tolerances never bring the edges closer', () => {
    fc.assert(fc.property(releases, between(1.31, 20), between(0, 20), (release, times, more) => {
      const wider = { ...release, options: [(release.options[0] as number) + more, (release.options[1] as number) + more, release.options[2]!, release.options[3]!] };
      const current = release.ir * times;
      notLess(number(callTime(current, wider, 'slow')), number(callTime(current, release, 'slow')));
      const [fast, faster] = [callTime(current, release, 'fast'), callTime(current, wider, 'fast')];
      if (typeof fast === 'number' && typeof faster === 'number') notLess(fast, faster);
    }));
  });
});

describe('relays and bands', () => {
  const law = fc.constantFrom('standard', 'very', 'extremely');
  test('relay time is in proportion to the multiplier, depends on the ratio only, and falls with current', () => {
    fc.assert(fc.property(between(1, 400), between(1.1, 19), between(0.05, 5), law, between(1.001, 1.05), (setting, multiple, multiplier, name, more) => {
      const time = number(run('RELAY_TIME', setting * multiple, setting, multiplier, name));
      near(number(run('RELAY_TIME', setting * multiple, setting, 2 * multiplier, name)), 2 * time);
      near(number(run('RELAY_TIME', 3 * setting * multiple, 3 * setting, multiplier, name)), time, 1e-6);
      expect(number(run('RELAY_TIME', setting * multiple * more, setting, multiplier, name))).toBeLessThan(time);
    }));
  });
  test('all three laws grow beyond bounds towards the setting and stay finite', () => {
    fc.assert(fc.property(law, between(1e-8, 1e-3), (name, above) => {
      const time = number(run('RELAY_TIME', 100 * (1 + above), 100, 1, name));
      expect(Number.isFinite(time)).toBe(true);
      expect(time).toBeGreaterThan(1000);
    }));
  });
  test('certain hold lies below certain trip, and both in proportion to the rating of one class', () => {
    fc.assert(fc.property(between(16, 62), fc.constantFrom('gG', 'breaker', 'miniature'), fc.constantFrom('B', 'C', 'D'), (rated, kind, type) => {
      expect(number(run('CONVENTIONAL_CURRENT', rated, kind, 'no trip'))).toBeLessThan(number(run('CONVENTIONAL_CURRENT', rated, kind, 'trip')));
      near(number(run('CONVENTIONAL_CURRENT', 2 * rated, kind)), 2 * number(run('CONVENTIONAL_CURRENT', rated, kind)));
      expect(number(run('BAND_MINIATURE', rated, type, 'hold'))).toBeLessThan(number(run('BAND_MINIATURE', rated, type, 'trip')));
      near(number(run('BAND_MINIATURE', 2 * rated, type, 'trip')), 2 * number(run('BAND_MINIATURE', rated, type, 'trip')));
    }));
  });
});

describe('hostile arguments', () => {
  const names = namesOf('curve');
  test('the family is whole', () => {
    expect(names.sort()).toEqual(['BAND_FUSE', 'BAND_FUSE_JOULE', 'BAND_MINIATURE', 'CONVENTIONAL_CURRENT', 'CURVE_CHECK', 'CURVE_CURRENT', 'CURVE_TIME', 'RELAY_TIME', 'TRIP_BAND', 'TRIP_TIME']);
  });
  test.each(names)('%s answers a finite figure, a word, or an error with its reason', answersSoundly);
});
