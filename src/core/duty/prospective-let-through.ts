import { type Working, silent } from '../working';

/**
 * Joule integral of the fault current left to flow for a time, without its d.c. part.
 * @param fault r.m.s. fault current, kA
 * @param time  duration, s
 * @returns joule integral, A²s
 */
export function symmetricalLetThrough(fault: number, time: number, work: Working = silent): number {
  const joule = (1000 * fault) ** 2 * time;
  work.step('I²t', 'I²·t', { I: [fault, 'kA'], t: [time, 's'] }, [joule, 'A²s']);
  return joule;
}

/** ∫u², ∫u·v and ∫v² over the angle from 0 to θ, where i = √2·I·(u·cos ψ + v·sin ψ), u = sin x, v = cos x − e^(−r·x). */
interface WaveIntegrals {
  uu: number;
  uv: number;
  vv: number;
}

function closedForm(theta: number, r: number): WaveIntegrals {
  const decay = Math.exp(-r * theta);
  const sin = Math.sin(theta);
  const cos = Math.cos(theta);
  const d = 1 + r * r;
  const sinDecayed = (1 - decay * (cos + r * sin)) / d;      // ∫ sin x·e^(−r·x)
  const cosDecayed = (r + decay * (sin - r * cos)) / d;      // ∫ cos x·e^(−r·x)
  const decayed = r === 0 ? theta : -Math.expm1(-2 * r * theta) / (2 * r);
  return {
    uu: (theta - sin * cos) / 2,
    uv: (sin * sin) / 2 - sinDecayed,
    vv: (theta + sin * cos) / 2 - 2 * cosDecayed + decayed,
  };
}

/** Nodes and weights of the five-point Gauss-Legendre rule on −1 to 1. */
const NODES = [
  [0, 0.5688888888888889],
  [-0.538469310105683, 0.47862867049936647],
  [0.538469310105683, 0.47862867049936647],
  [-0.906179845938664, 0.23692688505618908],
  [0.906179845938664, 0.23692688505618908],
] as const;

/** For a very short time the closed form subtracts figures that are nearly alike; five nodes are then exact to all digits. */
function byNodes(theta: number, r: number): WaveIntegrals {
  const sum = { uu: 0, uv: 0, vv: 0 };
  for (const [node, weight] of NODES) {
    const x = (theta * (1 + node)) / 2;
    const u = Math.sin(x);
    const v = -2 * Math.sin(x / 2) ** 2 - Math.expm1(-r * x);
    const w = (weight * theta) / 2;
    sum.uu += w * u * u;
    sum.uv += w * u * v;
    sum.vv += w * v * v;
  }
  return sum;
}

const SHORT = 0.1;

/**
 * Joule integral of the asymmetrical fault current left to flow for a time: the greatest over the closing angle ψ of ∫i²,
 * i = √2·I·(sin(ωt + ψ) − sin ψ·e^(−ωt·R/X)). The integral is a + b·cos 2ψ + c·sin 2ψ, so its greatest is a + √(b² + c²).
 * Source: the current of IEC 60909-0:2016; its clause 12 (m + n) is the whole-cycle average of the same.
 * @param fault    r.m.s. fault current, kA
 * @param time     duration, s
 * @param rOverX   R/X of the fault, 0 or more
 * @param hertz    frequency, Hz
 * @returns joule integral, A²s
 */
export function asymmetricalLetThrough(fault: number, time: number, rOverX: number, hertz: number, work: Working = silent): number {
  const omega = 2 * Math.PI * hertz;
  const theta = omega * time;
  const { uu, uv, vv } = theta * (1 + rOverX) < SHORT ? byNodes(theta, rOverX) : closedForm(theta, rOverX);
  const scale = (2 * (1000 * fault) ** 2) / omega;
  const a = (scale * (uu + vv)) / 2;
  const b = (scale * (uu - vv)) / 2;
  const c = scale * uv;
  const joule = a + Math.hypot(b, c);
  const inputs = { I: [fault, 'kA'], t: [time, 's'], 'R/X': rOverX, f: [hertz, 'Hz'] } as const;
  work.step('a', '∫i² averaged over ψ', inputs, [a, 'A²s']);
  work.step('b', 'share of ∫i² that goes with cos 2ψ', inputs, [b, 'A²s']);
  work.step('c', 'share of ∫i² that goes with sin 2ψ', inputs, [c, 'A²s']);
  work.step('I²t', 'a + √(b² + c²)', { a: [a, 'A²s'], b: [b, 'A²s'], c: [c, 'A²s'] }, [joule, 'A²s']);
  return joule;
}
