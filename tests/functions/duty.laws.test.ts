import fc from 'fast-check';
import { answersCleanly, namesOf } from '../support/hostile-calls';
import { between } from '../support/curves';
import { run } from '../support/run';

const number = (value: unknown): number => {
  expect(typeof value).toBe('number');
  return value as number;
};
const call = (name: string, ...args: unknown[]): number => number(run(name, ...(args as never[])));
const near = (a: number, b: number, part = 1e-9) => expect(Math.abs(a - b)).toBeLessThanOrEqual(part * Math.max(Math.abs(a), Math.abs(b)));

const fault = between(0.5, 150);
const hertz = between(45, 65);
const rOverX = fc.oneof(fc.constant(0), between(0.001, 100));
/** From microseconds to the longest, even in the logarithm. */
const time = between(-6, Math.log10(5)).map((exponent) => 10 ** exponent);

describe('prospective let-through', () => {
  test('never falls with time, and goes with the square of the current', () => {
    fc.assert(fc.property(fault, time, between(1.0001, 3), rOverX, hertz, (level, seconds, more, ratio, f) => {
      const joule = call('LETTHROUGH_PROSPECTIVE', level, seconds, `${ratio}`, f);
      expect(joule).toBeGreaterThan(0);
      expect(call('LETTHROUGH_PROSPECTIVE', level, Math.min(5, seconds * more), `${ratio}`, f)).toBeGreaterThanOrEqual(joule * (1 - 1e-9));
      near(call('LETTHROUGH_PROSPECTIVE', 2 * level, seconds, `${ratio}`, f), 4 * joule);
    }));
  });
  test('the short-time way and the closed form meet', () => {
    fc.assert(fc.property(fault, between(0, 20), hertz, (level, ratio, f) => {
      const meeting = 0.1 / (1 + ratio) / (2 * Math.PI * f);
      const [before, after] = [1 - 1e-7, 1 + 1e-7].map((part) => call('LETTHROUGH_PROSPECTIVE', level, meeting * part, `${ratio}`, f));
      near(before!, after!, 2e-6);
      expect(after).toBeGreaterThan(before!);
    }));
  });
  test('a wave wholly offset carries three times the joule integral over whole cycles', () => {
    fc.assert(fc.property(fault, fc.integer({ min: 1, max: 100 }), (level, cycles) => near(call('LETTHROUGH_PROSPECTIVE', level, cycles / 50, '0'), 3 * call('LETTHROUGH_PROSPECTIVE', level, cycles / 50))));
  });
  test('after long the d.c. part no longer counts', () => {
    fc.assert(fc.property(fault, between(0.1, 5), (level, ratio) => near(call('LETTHROUGH_PROSPECTIVE', level, 5, ratio), call('LETTHROUGH_PROSPECTIVE', level, 5), 0.01)));
  });
  test('units: kA and A, s and ms', () => {
    fc.assert(fc.property(fault, time, (level, seconds) => near(call('LETTHROUGH_PROSPECTIVE', `${1000 * level} A`, `${1000 * seconds} ms`), call('LETTHROUGH_PROSPECTIVE', level, seconds))));
  });
});

describe('let-through compared', () => {
  const joule = between(1e3, 1e9);
  test('one option against another is the other against the one turned over', () => {
    fc.assert(fc.property(joule, joule, fault, between(0.98, 1.02), (a, b, level, part) => {
      const [forth, back] = [run('LETTHROUGH_RATIO', a, b, level, level * part), run('LETTHROUGH_RATIO', b, a, level * part, level)];
      if (typeof forth === 'number') near(forth * number(back), 1);
      else expect([forth, back]).toMatchObject([{ code: '#NUM!' }, { code: '#NUM!' }]);
    }));
  });
  test('pass, margin and levels go together', () => {
    fc.assert(fc.property(joule, joule, fault, between(0.95, 1.05), (let_, withstand, level, part) => {
      const [verdict, margin] = [run('LETTHROUGH_TEST', let_, withstand, level, level * part), run('LETTHROUGH_MARGIN', let_, withstand, level, level * part)];
      if (verdict === 'not shown') expect(margin).toMatchObject({ code: '#N/A' });
      else expect(verdict).toBe(number(margin) >= -1e-7 ? 'pass' : 'FAIL');
      if (Math.abs(part - 1) < 0.0099) expect(verdict).not.toBe('not shown');
      if (Math.abs(part - 1) > 0.0102) expect(verdict).toBe('not shown');
    }));
  });
});

describe('sheets and estimates', () => {
  const sheet = [[5, 5.6], [10, 9.2], [25, 13], [50, 17], [100, 22]];
  test('a reading lies between its neighbours and rises with the fault', () => {
    fc.assert(fc.property(between(5, 100), between(5, 100), (a, b) => {
      const [low, high] = [Math.min(a, b), Math.max(a, b)].map((level) => call('CUTOFF_POINTS', sheet, level, 415, 400));
      expect(low).toBeLessThanOrEqual(high! * (1 + 1e-9));
      const next = sheet.findIndex(([x]) => x! >= a);
      const value = call('CUTOFF_POINTS', sheet, a, 415, 400);
      expect(value).toBeLessThanOrEqual(sheet[next]![1]! * (1 + 1e-9));
      expect(value).toBeGreaterThanOrEqual(sheet[Math.max(0, next - 1)]![1]! * (1 - 1e-9));
    }));
  });
  test('cut-off and pre-arcing time are one straight rise, and its joule integral is the link’s', () => {
    fc.assert(fc.property(between(3, 7).map((exponent) => 10 ** exponent), between(1, 300), hertz, (joule, level, f) => {
      const peak = run('CUTOFF_ESTIMATE', joule, level, f);
      const milliseconds = run('PREARC_TIME', joule, level, f);
      if (typeof peak !== 'number') return void expect([peak, milliseconds]).toMatchObject([{ code: '#NUM!' }, { code: '#NUM!' }]);
      const seconds = number(milliseconds) / 1000;
      near(peak, Math.SQRT2 * 2 * Math.PI * f * level * seconds);
      near(((1000 * peak) ** 2 * seconds) / 3, joule);
      expect(peak).toBeLessThanOrEqual(Math.SQRT2 * level * (1 + 1e-9));
    }));
  });
  test('a link melts sooner at a higher current', () => {
    fc.assert(fc.property(between(1e3, 1e9), between(0.01, 9), (joule, ms) => expect(call('PREARC_CURRENT', joule, ms + 1)).toBeLessThan(call('PREARC_CURRENT', joule, ms))));
  });
});

describe('adequacy', () => {
  test('service never shows more than once', () => {
    fc.assert(fc.property(fault, fault, between(0.25, 1), (level, icu, share) => {
      expect(call('BREAKING_MARGIN', level, icu, icu * share, 'service')).toBeLessThanOrEqual(call('BREAKING_MARGIN', level, icu, icu * share, 'once') + 1e-9);
      if (run('BREAKING_TEST', level, icu, icu * share, 'service') === 'pass') expect(run('BREAKING_TEST', level, icu, icu * share, 'once')).toBe('pass');
    }));
  });
  test('a low power factor never turns a FAIL into anything else, nor anything into a pass', () => {
    fc.assert(fc.property(fault, fault, between(0.01, 1), (level, icu, pf) => {
      const [plain, compared] = [run('BREAKING_TEST', level, icu, '', 'once'), run('BREAKING_TEST', level, icu, '', 'once', pf)];
      if (plain === 'FAIL') expect(compared).toBe('FAIL');
      else expect(['pass', 'not shown']).toContain(compared);
      expect(call('BREAKING_MARGIN', level, icu, '', 'once', pf)).toBe(call('BREAKING_MARGIN', level, icu, '', 'once'));
    }));
  });
  test('a longer delay never carries more, a shorter one than rated no more either', () => {
    const seconds = between(0.05, 3);
    fc.assert(fc.property(fault, fault, seconds, seconds, seconds, (level, icw, a, b, rated) => {
      const [short, long] = [Math.min(a, b), Math.max(a, b)].map((delay) => call('SHORTTIME_MARGIN', level, delay, icw, rated));
      expect(long).toBeLessThanOrEqual(short! + 1e-9);
      expect(short).toBeLessThanOrEqual((icw / level - 1) * 100 + 1e-9);
    }));
  });
  test('the ratio of peak to r.m.s. rises with the rating', () => {
    fc.assert(fc.property(between(4.51, 300), between(4.51, 300), fc.constantFrom('breaker', 'assembly'), (a, b, kind) =>
      expect(call('PEAK_RATIO', Math.max(a, b), kind)).toBeGreaterThanOrEqual(call('PEAK_RATIO', Math.min(a, b), kind))));
  });
  test('making by Icu is making by n·Icu', () => {
    fc.assert(fc.property(between(1, 600), between(4.51, 200), (peak, icu) => near(call('MAKING_MARGIN', peak, icu) + 200, call('MAKING_MARGIN', peak, '', call('PEAK_RATIO', icu, 'breaker') * icu) + 200)));
  });
});

describe('any arguments', () => {
  test('the family is whole', () => {
    expect(namesOf('duty').sort()).toEqual([
      'BREAKING_MARGIN', 'BREAKING_TEST', 'CONDITIONAL_MARGIN', 'CONDITIONAL_TEST', 'CUTOFF_ESTIMATE', 'CUTOFF_POINTS', 'LETTHROUGH_MARGIN', 'LETTHROUGH_POINTS', 'LETTHROUGH_PROSPECTIVE',
      'LETTHROUGH_RATIO', 'LETTHROUGH_TEST', 'MAKING_MARGIN', 'MAKING_TEST', 'PEAK_RATIO', 'PREARC_CURRENT', 'PREARC_TIME', 'SHORTTIME_MARGIN', 'SHORTTIME_TEST',
    ]);
  });
  test.each(namesOf('duty').map((name) => [name]))('%s answers cleanly', answersCleanly);
});
