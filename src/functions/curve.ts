import { conventionalCurrent } from '../core/curve/conventional-current';
import { curveCurrent } from '../core/curve/curve-current';
import { type CurveRow, curveFindings, findingsInWords } from '../core/curve/curve-findings';
import { curveTime } from '../core/curve/curve-time';
import { fuseGateCurrent, fuseJouleLimit } from '../core/curve/fuse-band';
import { miniatureBand } from '../core/curve/miniature-band';
import { relayTime } from '../core/curve/relay-time';
import { fuseRatings } from '../core/standards/fuse-gates';
import { trip } from './curve-trip';
import type { Cell, Matrix } from './kernel/cell';
import { family, member, worksheetFunction, worksheetFunctions } from './kernel/declaration';
import { quantity, ratio, word } from './kernel/kinds';
import { isNumberText } from './kernel/number';
import { headingFaults } from './kernel/points-heading';
import { curveUnits, headingRows, points, table } from './kernel/range-kinds';
import { isBlankCell } from './kernel/scalar';
import { fractionTyped } from './plausible';
import { curveTolerance, edge, meanCurve } from './shared-parameters';

const curvePoints = () => points('time', 'mean time-current curve of the device', {});
const curveBasis = [{ source: 'IEC 60269-1', clause: 'curve tolerance ±10 % in current', fromMemory: true }, { source: "the user's sheet" }] as const;
const SHEET = '{900,10;1100,5;1600,1;2400,0.2;3600,0.04;5500,0.01}';

export const curveTimeFunction = worksheetFunction({
  name: 'CURVE_TIME',
  summary: 'Operating time of a device at a current, read from your points at the slow, mean or fast edge.',
  tasks: ['how long until it trips', 'time-current curve', 'operating time from points'],
  formula: 'curve at I/(1 ± tolerance), log-log',
  parameters: { points: curvePoints(), current_A: quantity('A', 'current through the device', { upTo: 300000 }), tolerance_pct: curveTolerance(), edge: edge() },
  result: 's',
  basis: curveBasis,
  caution: 'mean is not for the record. tolerance_pct 0 only if your points are already the edge.',
  examples: [`=JW.CURVE_TIME(${SHEET},2000,10,"slow")`, `=JW.CURVE_TIME(${SHEET},2000,10,"fast")`, `=JW.CURVE_TIME(${SHEET},"1.2 kA",0,"slow")`],
  compute: (args, work) => curveTime(args.points, args.current_A, args.tolerance_pct, args.edge, work),
  cautions: (args) => [meanCurve(args), fractionTyped('tolerance_pct', args.tolerance_pct)],
});

export const curveCurrentFunction = worksheetFunction({
  name: 'CURVE_CURRENT',
  summary: 'Current at which a device operates within a time: for the loop limit.',
  tasks: ['current to trip in 0.4 s, 5 s', 'Ia for the loop', 'time-current curve the other way'],
  formula: 'least current with curve ≤ t, times (1 ± tolerance)',
  parameters: { points: curvePoints(), time_s: quantity('s', 'time within which the device must operate', { upTo: 1e5 }), tolerance_pct: curveTolerance(), edge: edge() },
  result: 'A',
  basis: curveBasis,
  caution: 'mean is not for the record. tolerance_pct 0 only if your points are already the edge.',
  examples: [`=JW.CURVE_CURRENT(${SHEET},5,10,"slow")`, `=JW.CURVE_CURRENT(${SHEET},0.4,10,"slow")`, `=JW.CURVE_CURRENT(${SHEET},"400 ms",8,"fast")`],
  compute: (args, work) => curveCurrent(args.points, args.time_s, args.tolerance_pct, args.edge, work),
  cautions: (args) => [meanCurve(args), fractionTyped('tolerance_pct', args.tolerance_pct)],
});

/** A row as the check of points sees it; a text that is a plain number counts as one, as it does where the points are used. */
const curveRow = (row: readonly Cell[]): CurveRow =>
  row.map((cell) => {
    if (isBlankCell(cell)) return 'blank';
    const value = typeof cell === 'string' && isNumberText(cell) ? Number(cell) : cell;
    return typeof value === 'number' && Number.isFinite(value) ? value : 'other';
  });

function checkedCurve(matrix: Matrix, kind: 'time' | 'cut-off' | 'joule'): string {
  const columns = matrix[0]!.length;
  if (columns !== 2) return `${columns === 1 ? 'one column' : `${columns} columns`}, a curve takes two`;
  const headings = headingRows(matrix);
  const inHeading = headings === 0 ? [] : headingFaults(matrix[0]!, curveUnits[kind]).map((problem) => `row 1: ${problem}`);
  return findingsInWords([...inHeading, ...curveFindings(matrix.slice(headings).map(curveRow), headings + 1, kind)]);
}

export const curveCheck = worksheetFunction({
  name: 'CURVE_CHECK',
  summary: 'Looks over a range of curve points and says what is wrong with it.',
  tasks: ['check curve points', 'pasted points', 'typing errors in a curve'],
  formula: 'own rules',
  parameters: {
    points: table('points to look over, two columns, with or without a heading', {}),
    kind: word('what the points are', { time: [], 'cut-off': ['cutoff', 'peak'], joule: ['i2t', 'let-through'] }, { default: 'time' }),
  },
  result: 'text',
  basis: [{ source: 'own rules' }],
  caution: "It looks at the order of the points, not at whether they are the device's.",
  examples: [`=JW.CURVE_CHECK(${SHEET})`, '=JW.CURVE_CHECK({100,10;150,1;140,0.5;900,0.01})', '=JW.CURVE_CHECK({"kA","kA peak";5,5.6;50,17;100,16},"cut-off")'],
  compute: (args) => checkedCurve(args.points, args.kind),
});

const bandNotCurve = 'limit band of the standard, not the curve of a link';
const fuseRating = () => quantity('A', 'rated current of the gG link', { listed: fuseRatings });

export const bandFuse = worksheetFunctions({
  summary: 'Limit band of the standard for a gG link: gate current, or pre-arcing joule integral at 0.01 s.',
  tasks: ['fuse gates', 'gG limits of the standard', 'IEC 60269 gates'],
  formula: 'table of the standard',
  basis: [{ source: 'IEC 60269-1:2006+A2', clause: 'tables 3 and 7', fromMemory: true }],
  caution: 'A band, not the curve of a link.',
  examples: ['=JW.BAND_FUSE(100,"5 s greatest")', '=JW.BAND_FUSE(200,"0.1 s least")', '=JW.BAND_FUSE_JOULE(63,"greatest")', '=JW.BAND_FUSE_JOULE(100,"least")'],
  members: [
    member({
      name: 'BAND_FUSE',
      summary: 'Gate current of a gG link by the standard. Worst edge: to trip in 5 s or 0.1 s the greatest, to hold the least.',
      parameters: {
        rated_A: fuseRating(),
        gate: word('gate of the standard', { '10 s least': ['imin 10 s'], '5 s greatest': ['imax 5 s'], '0.1 s least': ['imin 0.1 s'], '0.1 s greatest': ['imax 0.1 s'] }, {}),
      },
      result: 'A',
      compute: ({ rated_A, gate }, work) => fuseGateCurrent(rated_A, gate, work),
      cautions: () => [bandNotCurve],
    }),
    member({
      name: 'BAND_FUSE_JOULE',
      summary: 'Limit of the pre-arcing joule integral of a gG link at 0.01 s by the standard.',
      parameters: { rated_A: fuseRating(), limit: word('which limit', { least: ['min'], greatest: ['max'] }, {}) },
      result: 'A²s',
      compute: ({ rated_A, limit }, work) => fuseJouleLimit(rated_A, limit, work),
      cautions: () => [bandNotCurve],
    }),
  ],
});

const HOLD_OR_TRIP = { 'no trip': ['hold', 'no-trip'], trip: [] } as const;

export const bandMiniature = worksheetFunction({
  name: 'BAND_MINIATURE',
  summary: 'Instantaneous band of a miniature breaker: holds up to, trips from.',
  tasks: ['MCB', 'B, C, D curve', 'instantaneous trip of a miniature breaker'],
  formula: 'multiple·In',
  parameters: {
    rated_A: quantity('A', 'rated current of the miniature breaker', { upTo: 125 }),
    type: word('type of instantaneous tripping', { B: [], C: [], D: [] }, {}),
    limit: word('which end of the band', HOLD_OR_TRIP, {}),
  },
  result: 'A',
  basis: [{ source: 'IEC 60898-1:2015', clause: 'table 2', fromMemory: true }],
  examples: ['=JW.BAND_MINIATURE(20,"B","trip")', '=JW.BAND_MINIATURE(40,"D","hold")'],
  compute: ({ rated_A, type, limit }, work) => miniatureBand(rated_A, type, limit, work),
});

export const conventionalCurrentFunction = worksheetFunction({
  name: 'CONVENTIONAL_CURRENT',
  summary: 'Conventional current of a device: certain trip (I2), or certain hold, within its conventional time.',
  tasks: ['conventional tripping current I2', '1.6 In, 1.45 In', 'will it trip on overload'],
  formula: 'factor·In',
  parameters: {
    rated_A: quantity('A', 'rated current of the device; for a breaker its setting Ir', { upTo: 6300 }),
    kind: word('kind of device', { gG: [], breaker: ['mccb', 'acb'], miniature: ['mcb'] }, {}),
    limit: word('certain trip or certain hold', HOLD_OR_TRIP, { default: 'trip' }),
  },
  result: 'A',
  basis: [
    { source: 'IEC 60269-1/-2', fromMemory: true },
    { source: 'IEC 60947-2:2016', clause: 'table 6', fromMemory: true },
    { source: 'IEC 60898-1:2015', clause: 'table 7', fromMemory: true },
  ],
  examples: ['=JW.CONVENTIONAL_CURRENT(80,"gG")', '=JW.CONVENTIONAL_CURRENT(320,"breaker","no trip")', '=JW.CONVENTIONAL_CURRENT(10,"gG")'],
  compute: ({ rated_A, kind, limit }, work) => conventionalCurrent(rated_A, kind, limit, work),
});

export const relay = worksheetFunction({
  name: 'RELAY_TIME',
  summary: 'Operating time of an inverse-time relay upstream.',
  tasks: ['IDMT', 'overcurrent relay', 'standard, very, extremely inverse'],
  formula: 'TMS·k/((I/Is)^α − 1)',
  parameters: {
    current_A: quantity('A', "current at the relay's own voltage", { upTo: 300000 }),
    setting_A: quantity('A', 'setting, on the same side', { upTo: 10000 }),
    multiplier: ratio('time multiplier setting', { atLeast: 0.01, upTo: 15 }),
    law: word('inverse-time law', { standard: ['si', 'normal'], very: ['vi'], extremely: ['ei', 'extreme'] }, {}),
  },
  result: 's',
  basis: [{ source: 'IEC 60255-151:2009', fromMemory: true }],
  caution: "Nominal time: add the relay's error and the breaker. Use currents at the relay's own voltage.",
  examples: ['=JW.RELAY_TIME(640,160,0.2,"standard")', '=JW.RELAY_TIME(900,120,0.15,"very")'],
  compute: ({ current_A, setting_A, multiplier, law }, work) => relayTime(current_A, setting_A, multiplier, law, work),
  cautions: ({ current_A, setting_A }) => [current_A < 2 * setting_A && 'below twice the setting a relay may be slow or fail to start'],
});

export const curve = family('curve', [curveTimeFunction, curveCurrentFunction, curveCheck, bandFuse, bandMiniature, conventionalCurrentFunction, trip, relay]);
