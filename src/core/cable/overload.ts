import { figure, rounded } from '../figure';
import { type Judgement, atLeast, atMost, marginPct } from '../judgement';
import { outOfRange } from '../refusal';
import { type Working, silent } from '../working';

/** A conductor bears this multiple of its rating until the device has worked. */
const OVERLOAD_MULTIPLE = 1.45;

/**
 * Is a cable protected against overload? Load ≤ device ≤ cable, and conventional operating current ≤ 1.45 times the cable.
 * Source: IEC 60364-4-43:2023, 433.1.
 * @param load   design current, A
 * @param device rated current or setting, A
 * @param cable  current the cable may carry as installed, A
 * @param i2     current that surely operates the device in the conventional time, A, at least the rating
 */
export function judgeOverload(load: number, device: number, cable: number, i2: number, work: Working = silent): Judgement {
  if (!atLeast(i2, device)) throw outOfRange('i2_A', `${figure(i2)} A is below device_A, ${figure(device)} A`);
  const conditions = [
    { name: 'Ib ≤ In', formula: '(In/Ib − 1)·100', duty: load, allowed: device, inputs: { Ib: [load, 'A'], In: [device, 'A'] } },
    { name: 'In ≤ Iz', formula: '(Iz/In − 1)·100', duty: device, allowed: cable, inputs: { In: [device, 'A'], Iz: [cable, 'A'] } },
    { name: 'I2 ≤ 1.45·Iz', formula: '(1.45·Iz/I2 − 1)·100', duty: i2, allowed: OVERLOAD_MULTIPLE * cable, inputs: { I2: [i2, 'A'], Iz: [cable, 'A'] } },
  ] as const;
  const found = conditions.map((condition) => ({ ...condition, margin: marginPct(condition.allowed, condition.duty), met: atMost(condition.duty, condition.allowed) }));
  for (const { name, formula, inputs, margin, met } of found) work.step(`margin of ${name}`, formula, inputs, `${rounded(margin)} %, ${met ? 'met' : 'NOT MET'}`);
  return { verdict: found.every(({ met }) => met) ? 'pass' : 'FAIL', marginPct: Math.min(...found.map(({ margin }) => margin)) };
}
