import fc from 'fast-check';
import { type Argument, CellError, type Matrix } from '../../src/functions/kernel/cell';
import { between, currentInside, fallingCurve } from '../support/curves';
import { answersSoundly, namesOf } from '../support/hostile-calls';
import { run } from '../support/run';

const number = (value: unknown): number => {
  expect(typeof value).toBe('number');
  return value as number;
};
const near = (a: number, b: number, part = 1e-9) => expect(Math.abs(a - b)).toBeLessThanOrEqual(part * Math.max(Math.abs(a), Math.abs(b)));
const notLess = (a: number, b: number) => expect(a).toBeGreaterThanOrEqual(b - 1e-9 * Math.max(Math.abs(a), Math.abs(b), 1));
const shifted = (curve: Matrix, factor: number): Matrix => curve.map(([x, y]) => [(x as number) * factor, y!]);

/** Margin and verdict of one call. The verdict follows the sign of the margin. */
function judged(stem: string, ...argv: Argument[]): number {
  const margin = number(run(`${stem}_MARGIN`, ...argv));
  const verdict = run(`${stem}_TEST`, ...argv);
  if (Math.abs(margin) > 1e-6) expect(verdict).toBe(margin > 0 ? 'pass' : 'FAIL');
  return margin;
}

describe('margins', () => {
  test('rating ratio: depends on the ratio only, grows with the major, falls with the minor', () => {
    fc.assert(fc.property(between(10, 2000), between(0.5, 4), between(1.01, 2), between(1, 3), (minor, ratio, more, least) => {
      const margin = judged('SELECT_RATIO', minor * ratio, minor, 'gG', 'gG', least);
      near(100 + judged('SELECT_RATIO', (minor * ratio) / 2, minor / 2, 'gG', 'gG', least), 100 + margin);
      expect(judged('SELECT_RATIO', minor * ratio, minor * more, 'gG', 'gG', least)).toBeLessThan(margin);
      near(number(run('SELECT_RATIO', minor * ratio, minor)), ratio);
    }));
  });
  test('whatever the ratio, links of two types are not shown', () => {
    fc.assert(fc.property(between(10, 2000), between(1, 100), fc.constantFrom(['gG', 'aM'], ['aM', 'gG'], ['gG one', 'gG two'], ['aM', 'aM'], ['', 'gG']), (minor, ratio, types) => {
      expect(run('SELECT_RATIO_TEST', Math.min(minor * ratio, 10000), minor, ...types)).toBe('not shown');
      expect(run('SELECT_RATIO_MARGIN', Math.min(minor * ratio, 10000), minor, ...types)).toMatchObject({ code: '#N/A' });
    }));
  });
  test('joule: grows with the major, falls with the total and with the reserve; the levels may change places', () => {
    fc.assert(fc.property(between(1e3, 1e8), between(0.2, 5), between(1, 200), between(0, 150), between(1.01, 3), between(0.991, 1.009), (total, share, level, reserve, more, off) => {
      const margin = judged('SELECT_JOULE', total, total * share, level, level * off, reserve);
      near(100 + judged('SELECT_JOULE', total, total * share, level * off, level, reserve), 100 + margin);
      expect(judged('SELECT_JOULE', total * more, total * share, level, level, reserve)).toBeLessThan(margin);
      expect(judged('SELECT_JOULE', total, total * share * more, level, level, reserve)).toBeGreaterThan(margin);
      expect(judged('SELECT_JOULE', total, total * share, level, level, reserve + 10)).toBeLessThan(margin);
    }));
  });
  test('joule: levels more than 1 % apart are never compared', () => {
    fc.assert(fc.property(between(1e3, 1e8), between(0.2, 5), between(1, 100), between(1.0101, 2.5), (total, share, level, apart) => {
      for (const pair of [[level, level * apart], [level * apart, level]]) expect(run('SELECT_JOULE_TEST', total, total * share, ...pair)).toBe('not shown');
    }));
  });
  test('peak, time, back-up: more allowed never lowers the margin, more duty never raises it', () => {
    fc.assert(fc.property(between(1, 200), between(50, 60000), between(0, 40), between(1.01, 3), (cutoff, ii, pct, more) => {
      const margin = judged('SELECT_PEAK', cutoff, ii, pct);
      expect(judged('SELECT_PEAK', cutoff * more, ii, pct)).toBeLessThan(margin);
      expect(judged('SELECT_PEAK', cutoff, ii * more, pct)).toBeGreaterThan(margin);
      expect(judged('SELECT_PEAK', cutoff, ii, pct + 5)).toBeLessThan(margin);
    }));
    fc.assert(fc.property(between(0.01, 5), between(0.01, 5), between(0.05, 1), between(0.01, 1), (minor, major, gap, more) => {
      const margin = judged('SELECT_TIME', minor, major, gap);
      expect(judged('SELECT_TIME', minor + more, major, gap)).toBeLessThan(margin);
      expect(judged('SELECT_TIME', minor, major + more, gap)).toBeGreaterThan(margin);
    }));
    fc.assert(fc.property(between(1, 80), between(5, 100), between(5, 120), between(1.01, 2), (fault, icu, tested, more) => {
      notLess(number(run('BACKUP_MARGIN', fault, icu, '', tested)), number(run('BACKUP_MARGIN', fault * more, icu, '', tested)));
      notLess(number(run('BACKUP_MARGIN', fault, icu, '', tested * more)), number(run('BACKUP_MARGIN', fault, icu, '', tested)));
    }));
  });
  test('above Icu nothing but a tested pair passes', () => {
    fc.assert(fc.property(between(5, 100), between(1.001, 2.5), fc.option(between(1, 200)), (icu, times, takeover) => {
      expect(['not shown', 'FAIL']).toContain(run('BACKUP_TEST', icu * times, icu, takeover));
      expect(run('BACKUP_TEST', icu * times, icu, takeover, icu * times)).toBe('pass');
    }));
  });
  test('total up to the limit, partial above it', () => {
    fc.assert(fc.property(between(100, 100000), fc.option(between(5, 100)), between(0, 50), between(1.001, 1.5), (ii, icw, pct, times) => {
      const limit = number(run('SELECT_LIMIT', ii, icw, '', pct));
      notLess(ii / 1000, limit);
      if (icw !== null) notLess(icw, limit);
      expect(run('SELECT_EXTENT', limit, limit)).toBe('total');
      expect(run('SELECT_EXTENT', limit * times, limit)).toBe('partial');
      expect(run('SELECT_LIMIT', ii, icw, 36, pct)).toBe(36);
    }));
  });
});

describe('curve against curve', () => {
  type Row = [string, number, number, number, string];
  const compare = (...argv: Argument[]): Row[] => (run('SELECT_RANGES', ...argv, false) as Row[]).filter((row) => row[1] as unknown !== '');

  test('the least ratio is a least: nowhere in a range is the major nearer, and the ranges follow one another', () => {
    let looked = 0;
    fc.assert(fc.property(fallingCurve({ steps: true }), between(0, 20), fallingCurve({ steps: true }), between(0, 20), between(1, 20), between(0, 1), (minor, minorPct, major, majorPct, fault, place) => {
      const rows = compare(minor, minorPct, major, majorPct, fault);
      rows.slice(1).forEach((row, i) => near(row[1], rows[i]![2]));
      for (const [, from, to, ratio, verdict] of rows) {
        expect(to).toBeGreaterThan(from);
        if (Math.abs(ratio - 1) > 1e-6) expect(verdict === 'FAIL').toBe(ratio < 1);
        const current = from * (to / from) ** (0.001 + 0.998 * place);
        const slow = run('CURVE_TIME', minor, current, minorPct, 'slow');
        const fast = run('CURVE_TIME', major, current, majorPct, 'fast');
        if (typeof slow !== 'number' || typeof fast !== 'number') continue;
        notLess((fast / slow) * (1 + 1e-9), ratio);
        looked += 1;
      }
    }), { numRuns: 300 });
    expect(looked).toBeGreaterThan(100);
  });
  test('each range holds the times it is named for', () => {
    const limits: Record<string, [number, number]> = { overload: [1, Infinity], 'short-time': [0.1, 1], instantaneous: [0, 0.1] };
    fc.assert(fc.property(fallingCurve({ steps: true }), between(0, 20), between(0, 1), (minor, pct, place) => {
      for (const [range, from, to] of compare(minor, pct, [[1, 1e5], [3e5, 1e4]], 0, 40)) {
        const current = from * (to / from) ** (0.001 + 0.998 * place);
        const time = run('CURVE_TIME', minor, current, pct, 'slow');
        if (typeof time !== 'number') continue;
        expect(time).toBeGreaterThanOrEqual(limits[range]![0] * (1 - 1e-9));
        expect(time).toBeLessThanOrEqual(limits[range]![1] * (1 + 1e-9));
      }
    }));
  });
  test('wider tolerances and a nearer major never improve a range', () => {
    fc.assert(fc.property(fallingCurve(), fallingCurve(), between(0, 15), between(0, 15), between(1, 20), between(1.01, 1.5), (minor, major, pct, more, fault, nearer) => {
      const ranges = ['overload', 'short-time', 'instantaneous'];
      const verdicts = (argv: Argument[]) => ranges.map((range) => run('SELECT_RANGES_AT', ...argv, range));
      const plain = verdicts([minor, pct, major, pct, fault]);
      // Of a major that is further off every point lies further right.
      const away = verdicts([minor, pct, shifted(major, nearer), pct, fault]);
      plain.forEach((verdict, i) => {
        if (verdict === 'pass') expect(away[i]).toBe('pass');
      });
      const least = (rows: Row[]) => Math.min(...rows.map((row) => row[3]));
      const [narrow, wide] = [compare(minor, pct, major, pct, fault), compare(minor, pct, major, pct + more, fault)];
      const end = (rows: Row[]) => (rows.length === 0 ? 0 : rows[rows.length - 1]![2]);
      if (narrow.length > 0 && end(wide) === end(narrow)) notLess(least(narrow), least(wide));
    }));
  });
  test('a curve against itself moved right passes; against itself moved left it fails', () => {
    fc.assert(fc.property(fallingCurve(), between(1.05, 3), (curve, factor) => {
      const fault = currentInside(curve, 1) / 1000;
      for (const [range, , , ratio, verdict] of compare(curve, 0, shifted(curve, factor), 0, fault)) {
        notLess(ratio, 1);
        expect(verdict).toBe(range === 'instantaneous' ? 'not shown' : 'pass');
      }
      const rows = compare(shifted(curve, factor), 0, curve, 0, fault);
      if (rows.length > 0) expect(rows.some((row) => row[4] === 'FAIL')).toBe(true);
    }));
  });
  test('take-over: just above it the fuse is first, just below it is not, and up to the end the fuse stays first', () => {
    let found = 0;
    fc.assert(fc.property(fallingCurve(), fallingCurve({ steps: true }), between(0, 20), fc.constantFrom('slow', 'fast'), between(0, 1), (fuse, breaker, pct, edge, place) => {
      const takeover = run('TAKEOVER_CURRENT', fuse, breaker, pct, edge);
      if (takeover instanceof CellError) return void expect(takeover.code).toBe('#NUM!');
      found += 1;
      const current = number(takeover) * 1000;
      const factor = edge === 'slow' ? 1 + pct / 100 : 1 - pct / 100;
      const end = Math.min(currentInside(fuse, 1, factor), currentInside(breaker, 1));
      const lead = (at: number) => (run('CURVE_TIME', breaker, at, 0, 'slow') as number) / (run('CURVE_TIME', fuse, at, pct, edge) as number);
      const above = current * (end / current) ** (1e-4 + 0.9998 * place);
      if (above < end) expect(lead(above)).toBeGreaterThanOrEqual(1 - 1e-9);
      const below = lead(current * (1 - 1e-7));
      if (Number.isFinite(below)) expect(below).toBeLessThanOrEqual(1 + 1e-5);
    }), { numRuns: 400 });
    expect(found).toBeGreaterThan(30);
  });
  test('take-over moves with the currents of both curves', () => {
    fc.assert(fc.property(fallingCurve(), fallingCurve(), between(0, 20), between(0.5, 2), (fuse, breaker, pct, factor) => {
      const [here, there] = [run('TAKEOVER_CURRENT', fuse, breaker, pct, 'slow'), run('TAKEOVER_CURRENT', shifted(fuse, factor), shifted(breaker, factor), pct, 'slow')];
      if (here instanceof CellError) expect(there).toEqual(here);
      else near(number(there), number(here) * factor, 1e-6);
    }));
  });
});

describe('hostile arguments', () => {
  const names = namesOf('selectivity');
  test('the family is whole', () => {
    expect(names.sort()).toEqual([
      'BACKUP_MARGIN', 'BACKUP_TEST', 'SELECT_EXTENT', 'SELECT_JOULE_MARGIN', 'SELECT_JOULE_TEST', 'SELECT_LIMIT', 'SELECT_PEAK_MARGIN', 'SELECT_PEAK_TEST', 'SELECT_RANGES',
      'SELECT_RANGES_AT', 'SELECT_RATIO', 'SELECT_RATIO_MARGIN', 'SELECT_RATIO_TEST', 'SELECT_TIME_MARGIN', 'SELECT_TIME_TEST', 'TAKEOVER_CURRENT',
    ]);
  });
  test.each(names)('%s answers a finite figure, a word, or an error with its reason', answersSoundly);
});
