/** Units of CONVERT, by kind: size of each in the first of its kind. Source: the table in the help page of CONVERT; sizes are those of the units' definitions. */
export interface UnitSize {
  kind: string;
  size: number;
  /** Power of a length under a prefix (mm2: 10^-6 m²); 0 where the unit takes no prefix. */
  prefixPower: 0 | 1 | 2 | 3;
}

const INCH = 0.0254;
const FOOT = 0.3048;
const MILE = 1609.344;
const POUND = 453.59237;
const GRAVITY = 9.80665;
const POUND_FORCE = (POUND / 1000) * GRAVITY;
const GALLON = 231 * INCH ** 3;
const UK_GALLON = 4.54609e-3;

/** Names share a size; a star before them says that they take metric prefixes. */
type Kind = Readonly<Record<string, number>>;

const LENGTHS: Kind = {
  '*m': 1, mi: MILE, Nmi: 1852, in: INCH, ft: FOOT, yd: 0.9144, ell: 1.143, survey_mi: 1609.347218694438,
  '*ang': 1e-10, ly: 9.4607304725808e15, '*parsec *pc': 3.085677581491367e16, 'Picapt Pica': INCH / 72, pica: INCH / 6,
};

/** Areas and volumes of the lengths: ft2, ft^2, mm3 … */
const powers = (power: 2 | 3): Kind => Object.fromEntries(
  Object.entries(LENGTHS).filter(([names]) => !names.includes('parsec') && names !== 'ell' && names !== 'survey_mi' && names !== 'pica')
    .map(([names, size]) => [names.split(' ').flatMap((name) => [`${name}${power}`, `${name}^${power}`]).join(' '), size ** power]),
);

const KINDS: Readonly<Record<string, Kind>> = {
  mass: {
    '*g': 1, sg: POUND * GRAVITY / FOOT, lbm: POUND, ozm: POUND / 16, grain: POUND / 7000, 'cwt shweight': 100 * POUND,
    'uk_cwt lcwt hweight': 112 * POUND, stone: 14 * POUND, ton: 2000 * POUND, 'uk_ton LTON brton': 2240 * POUND,
  },
  length: LENGTHS,
  time: { '*s *sec': 1, 'mn min': 60, hr: 3600, 'd day': 86400, yr: 31557600 },
  pressure: { '*Pa *p': 1, '*atm *at': 101325, '*mmHg': 133.322, psi: POUND_FORCE / INCH ** 2, Torr: 101325 / 760 },
  force: { '*N': 1, '*dyn *dy': 1e-5, lbf: POUND_FORCE, '*pond': GRAVITY / 1000 },
  energy: {
    '*J': 1, '*e': 1e-7, '*c': 4.184, '*cal': 4.1868, 'HPh hh': 550 * FOOT * POUND_FORCE * 3600, '*Wh *wh': 3600,
    flb: FOOT * POUND_FORCE, 'BTU btu': 1055.05585262,
  },
  power: { '*W *w': 1, 'HP h': 550 * FOOT * POUND_FORCE, PS: 75 * GRAVITY },
  magnetism: { '*T': 1, '*ga': 1e-4 },
  volume: {
    '*l *L *lt': 1e-3, tsp: GALLON / 768, tspm: 5e-6, tbs: GALLON / 256, oz: GALLON / 128, cup: GALLON / 16, 'pt us_pt': GALLON / 8,
    uk_pt: UK_GALLON / 8, qt: GALLON / 4, uk_qt: UK_GALLON / 4, gal: GALLON, uk_gal: UK_GALLON, barrel: 42 * GALLON,
    bushel: 2150.42 * INCH ** 3, 'GRT regton': 100 * FOOT ** 3, MTON: 40 * FOOT ** 3, ...powers(3),
  },
  area: { uk_acre: MILE ** 2 / 640, us_acre: 1609.347218694438 ** 2 / 640, '*ar': 100, ha: 1e4, Morgen: 2500, ...powers(2) },
  information: { '*bit': 1, '*byte': 8 },
  speed: { admkn: (6080 * FOOT) / 3600, kn: 1852 / 3600, '*m/h *m/hr': 1 / 3600, '*m/s *m/sec': 1, mph: MILE / 3600 },
};

function table(): Map<string, UnitSize> {
  const units = new Map<string, UnitSize>();
  for (const [kind, sizes] of Object.entries(KINDS)) {
    for (const [names, size] of Object.entries(sizes)) {
      for (const name of names.split(' ')) {
        const unit = name.replace('*', '');
        const power = /2$/.test(unit) ? 2 : /3$/.test(unit) ? 3 : 1;
        units.set(unit, { kind, size, prefixPower: name.startsWith('*') ? power : 0 });
      }
    }
  }
  return units;
}

export const UNITS: ReadonlyMap<string, UnitSize> = table();

export const PREFIXES: Readonly<Record<string, number>> = {
  Y: 1e24, Z: 1e21, E: 1e18, P: 1e15, T: 1e12, G: 1e9, M: 1e6, k: 1e3, h: 1e2, da: 10, e: 10,
  d: 0.1, c: 0.01, m: 1e-3, u: 1e-6, n: 1e-9, p: 1e-12, f: 1e-15, a: 1e-18, z: 1e-21, y: 1e-24,
};

/** Prefixes of bits and bytes alone. */
export const BINARY_PREFIXES: Readonly<Record<string, number>> = {
  ki: 2 ** 10, Mi: 2 ** 20, Gi: 2 ** 30, Ti: 2 ** 40, Pi: 2 ** 50, Ei: 2 ** 60, Zi: 2 ** 70, Yi: 2 ** 80,
};
