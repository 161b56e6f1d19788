import { CellError } from '../../src/functions/kernel/cell';
import type { Recorder } from '../../src/core/working';
import { outcomeOf, run } from '../support/run';

const refusal = (code: CellError['code'], message: string) => new CellError(code, message);

/** ∫i²dt of the asymmetrical wave by Simpson's rule, for one closing angle; shares nothing with the closed form. */
function integrated(fault: number, time: number, rOverX: number, hertz: number, psi: number): number {
  const omega = 2 * Math.PI * hertz;
  const squared = (t: number): number => 2 * (1000 * fault * (Math.sin(omega * t + psi) - Math.sin(psi) * Math.exp(-omega * rOverX * t))) ** 2;
  const steps = 2 * Math.ceil(100 + 100 * time * hertz + 20 * time * omega * rOverX);
  const h = time / steps;
  let sum = squared(0) + squared(time);
  for (let i = 1; i < steps; i += 1) sum += (i % 2 ? 4 : 2) * squared(i * h);
  return (sum * h) / 3;
}

describe('LETTHROUGH_PROSPECTIVE', () => {
  test('without R/X: I²·t', () => {
    expect(run('LETTHROUGH_PROSPECTIVE', 6.5, 0.4)).toBe(1.69e7);
    expect(run('LETTHROUGH_PROSPECTIVE', '6500 A', '400 ms')).toBe(1.69e7);
    expect(run('LETTHROUGH_PROSPECTIVE', 22, '60 ms', 0.3)).toBeCloseTo(34064468.934, 2);
  });

  const cases = [
    [22, 0.06, 0.3, 50], [22, 0.06, 0, 50], [50, 0.01, 0.2, 50], [10, 0.003, 0.1, 60], [65, 0.02, 1.5, 50], [5, 0.5, 0.05, 60], [30, 0.02, 30, 50],
    [30, 0.0008, 100, 45], [30, 0.0002, 0.4, 50], [30, 0.00001, 2, 65],
  ] as const;
  test.each(cases)('%p kA for %p s at R/X %p, %p Hz: closed form against numerical integration over all closing angles', (fault, time, rOverX, hertz) => {
    const closed = run('LETTHROUGH_PROSPECTIVE', fault, time, rOverX, hertz) as number;
    const over = Array.from({ length: 37 }, (_, i) => integrated(fault, time, rOverX, hertz, (i * Math.PI) / 36));
    const [greatest, least] = [Math.max(...over), Math.min(...over)];
    // A grid of 5° misses the peak of a + √(b² + c²)·cos 2(ψ − ψ0) by (greatest − least)/2·(1 − cos 5°) at most.
    const missed = ((greatest - least) / 2) * (1 - Math.cos(Math.PI / 36));
    expect(greatest).toBeLessThanOrEqual(closed * (1 + 1e-6));
    expect(greatest).toBeGreaterThanOrEqual((closed - missed) * (1 - 1e-6));
  });

  test('very short times keep their figures: I²·2ω²t³/3·(1 + (R/X)²) is the first term of the series', () => {
    for (const [time, rOverX] of [[1e-9, 0.3], [1e-7, 0], [1e-8, 100]] as const) {
      const leading = ((2 * (22000 * 100 * Math.PI) ** 2 * time ** 3) / 3) * (1 + rOverX ** 2);
      expect((run('LETTHROUGH_PROSPECTIVE', 22, time, rOverX) as number) / leading).toBeCloseTo(1, 3);
    }
  });

  test('the working goes over from very short times to others without a break', () => {
    // From ωt·(1 + R/X) = 0.1 on another way of calculation is taken, at 0.24485 ms here. All three go with t³ to t⁴ there: 0.1 µs more is 0.13 to 0.17 %.
    const shares = (time: number) => (outcomeOf('LETTHROUGH_PROSPECTIVE', [22, time, 0.3]).work as Recorder).steps.slice(0, 3).map(({ result }) => Number((result as readonly unknown[])[0]));
    const after = shares(0.0002449);
    shares(0.0002448).forEach((share, i) => {
      expect(after[i]! / share).toBeGreaterThan(1.001);
      expect(after[i]! / share).toBeLessThan(1.002);
    });
  });

  test('m + n of the fault standard is its whole-cycle average: near it after five cycles, a sixth below it at half a cycle', () => {
    // IEC 60909-0:2016 clause 12 with n = 1: I²·t·(m + 1), m from κ; κ carries a fitted constant, hence 3 %.
    const averaged = (fault: number, time: number, rOverX: number): number => {
      const decay = 2 * 50 * time * Math.log(0.02 + 0.98 * Math.exp(-3 * rOverX));
      return (1000 * fault) ** 2 * time * (Math.expm1(2 * decay) / decay + 1);
    };
    for (const time of [0.1, 0.5, 1]) {
      for (const rOverX of [0.05, 0.1, 0.3, 1]) expect(Math.abs((run('LETTHROUGH_PROSPECTIVE', 22, time, rOverX) as number) / averaged(22, time, rOverX) - 1)).toBeLessThan(0.03);
    }
    expect((run('LETTHROUGH_PROSPECTIVE', 22, 0.01, 0.05) as number) / averaged(22, 0.01, 0.05)).toBeGreaterThan(1.15);
  });

  test('says that it is not for limiting devices, and that the d.c. part is left out', () => {
    const always = 'not for limiting devices: use their let-through points';
    expect(run('CAUTION', 'LETTHROUGH_PROSPECTIVE', 6.5, 0.4)).toBe(always);
    expect(run('CAUTION', 'LETTHROUGH_PROSPECTIVE', 6.5, 0.06, 0.3)).toBe(always);
    expect(run('CAUTION', 'LETTHROUGH_PROSPECTIVE', 6.5, 0.06)).toBe(`${always}; d.c. part left out of a time below 0.1 s`);
    expect(run('CAUTION', 'LETTHROUGH_PROSPECTIVE', 6.5, 0.1)).toBe(always);
    expect(run('ASSUMED', 'LETTHROUGH_PROSPECTIVE', 6.5, 0.4)).toBe('r_over_x=d.c. part left out; hz=50');
  });

  test('bad input', () => {
    expect(run('LETTHROUGH_PROSPECTIVE', 6.5, 6)).toEqual(refusal('#NUM!', 'time_s: 6 is outside above 0, up to 5 s'));
    expect(run('LETTHROUGH_PROSPECTIVE', 6500, 0.4)).toEqual(refusal('#NUM!', 'fault_kA: 6500 is outside above 0, up to 300 kA'));
    expect(run('LETTHROUGH_PROSPECTIVE', 6.5, 0.4, -0.1)).toEqual(refusal('#VALUE!', 'r_over_x: got -0.1, takes 0 to 100'));
    expect(run('LETTHROUGH_PROSPECTIVE', 6.5, '')).toEqual(refusal('#N/A', 'missing: time_s'));
    expect(outcomeOf('LETTHROUGH_PROSPECTIVE', [6.5, 0.4, 0], { blankArrivesAsZero: true }).value).toEqual(refusal('#VALUE!', 'r_over_x is blank or zero: write 0 as text'));
  });
});

describe('LETTHROUGH', () => {
  test.each([
    [210000, 8265625, 36, 36, 'pass', 3836.0119],
    [9000000, 8265625, 36, 36.2, 'FAIL', -8.159722],
    ['0.21 kA²s', '8265625 A²s', '36000 A', 36, 'pass', 3836.0119],
    [8265625, 8265625, 36, 36, 'pass', 0],
    [210000, 8265625, 100, 101, 'pass', 3836.0119],
  ])('%p against %p, read at %p, fault %p', (letThrough, withstand, readAt, fault, verdict, margin) => {
    expect(run('LETTHROUGH_TEST', letThrough, withstand, readAt, fault)).toBe(verdict);
    expect(run('LETTHROUGH_MARGIN', letThrough, withstand, readAt, fault)).toBeCloseTo(margin, 4);
  });

  test('two fault levels are not compared, whichever is the higher', () => {
    const reason = 'levels differ: let-through at 25 kA, fault 36 kA';
    expect(run('LETTHROUGH_TEST', 210000, 8265625, 25, 36)).toBe('not shown');
    expect(run('LETTHROUGH_MARGIN', 210000, 8265625, 25, 36)).toEqual(refusal('#N/A', reason));
    expect(run('CAUTION', 'LETTHROUGH_TEST', 210000, 8265625, 25, 36)).toBe(reason);
    expect(run('LETTHROUGH_TEST', 210000, 8265625, 36, 25)).toBe('not shown');
    expect(run('LETTHROUGH_TEST', 210000, 8265625, 100, 101.1)).toBe('not shown');
  });

  test('a blank datum is not shown, a blank duty is missing, a bad argument wins over both', () => {
    expect(run('LETTHROUGH_TEST', 210000, '', 36, 36)).toBe('not shown');
    expect(run('LETTHROUGH_MARGIN', 210000, '', 36, 36)).toEqual(refusal('#N/A', 'missing: withstand_A2s'));
    expect(run('LETTHROUGH_TEST', 210000, 8265625, '', 36)).toBe('not shown');
    expect(run('LETTHROUGH_TEST', '', 8265625, 36, 36)).toEqual(refusal('#N/A', 'missing: let_A2s'));
    expect(run('LETTHROUGH_TEST', 210000, 8265625, 36, '')).toEqual(refusal('#N/A', 'missing: fault_kA'));
    expect(run('LETTHROUGH_TEST', 210000, '', 36, -36)).toEqual(refusal('#VALUE!', 'fault_kA: got -36, takes above 0, up to 300 kA'));
  });

  test('prospective I²·t in the place of a let-through is seen', () => {
    // 36 kA for half a cycle: 36000²·0.01 = 12.96 million A²s.
    const words = 'let_A2s is half a cycle or more of 36 kA: right only where the device does not limit';
    expect(run('CAUTION', 'LETTHROUGH_TEST', 12960000, 8265625, 36, 36)).toBe(words);
    expect(run('CAUTION', 'LETTHROUGH_TEST', run('LETTHROUGH_PROSPECTIVE', 36, 0.01), 8265625, 36, 36)).toBe(words);
    expect(run('CAUTION', 'LETTHROUGH_TEST', 12950000, 8265625, 36, 36)).toBe('');
  });

  test('amperes in the place of kiloamperes are refused', () => {
    expect(run('LETTHROUGH_TEST', 210000, 8265625, 36000, 36000)).toEqual(refusal('#NUM!', 'let_kA: 36000 is outside above 0, up to 300 kA'));
    expect(run('LETTHROUGH_TEST', '210 kA', 8265625, 36, 36)).toEqual(refusal('#VALUE!', 'let_A2s: got "210 kA": kA is current, takes A²s'));
  });
});

describe('LETTHROUGH_RATIO', () => {
  test('first against second, with the per cent in the working', () => {
    expect(run('LETTHROUGH_RATIO', 150000, 600000, 36, 36)).toBe(0.25);
    expect(run('SHOW_STEPS', 'LETTHROUGH_RATIO', 150000, 600000, 36, 36)).toContainEqual(['a in per cent of b = 100·a/b', '25 %']);
    expect(run('LETTHROUGH_RATIO', '0.15 kA²s', 600000, 50, 50.5)).toBe(0.25);
  });
  test('options at two fault levels are refused', () => {
    expect(run('LETTHROUGH_RATIO', 150000, 600000, 36, 25)).toEqual(refusal('#NUM!', 'levels differ: a at 36 kA, b at 25 kA'));
    expect(run('LETTHROUGH_RATIO', 150000, 600000, 25, 36)).toEqual(refusal('#NUM!', 'levels differ: a at 25 kA, b at 36 kA'));
    expect(run('LETTHROUGH_RATIO', 150000, 600000, 36, '')).toEqual(refusal('#N/A', 'missing: b_kA'));
  });
});
