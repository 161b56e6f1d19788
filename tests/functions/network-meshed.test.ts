import { parseComplex } from '../../src/core/complex';
import { type Cell, CellError, type Matrix } from '../../src/functions/kernel/cell';
import { expectPrinted, expectRefused } from '../support/expect';
import { outcomeOf, run } from '../support/run';

const branches: Matrix = [['N', 'S', '0.9+1.1i'], ['N', 'T', '3.4+2i'], ['S', 'T', '2.1+1.6i']];
const sources: Matrix = [['N', '1.5+8.2i'], ['S', '2.2+10.4i']];
const coupled: Matrix = [['N', 'S', '0.9+1.1i', 'either'], ['N', 'T', '3.4+2i', 'closed'], ['S', 'T', '2.1+1.6i', 'open']];
const feeding: Matrix = [['N', '1.5+8.2i', 'closed'], ['S', '2.2+10.4i', 'either']];

const digits = (cell: Cell): Cell => {
  if (typeof cell === 'number') return Number(cell.toPrecision(6));
  const z = typeof cell === 'string' && /\di$/.test(cell) ? parseComplex(cell) : undefined;
  return z ? `${Number(z.re.toPrecision(6))}+${Number(z.im.toPrecision(6))}i` : cell;
};
const table = (name: string, ...argv: unknown[]): Matrix => (run(name, ...(argv as Matrix[])) as Matrix).map((row) => row.map(digits));

/** Figures of the reference calculation, printed to six digits. */
describe('a mesh', () => {
  test('levels at every node', () => {
    expect(table('NET_MESHED', branches, sources, 400)).toEqual([
      ['node', 'Z mΩ', 'Ik3 kA', 'Ik2 kA', 'kappa', 'ip kA', 'note'],
      ['N', '1.03175+4.75385i', 49.8481, 43.1697, 1.53616, 108.293, ''],
      ['S', '1.13123+4.84651i', 48.7237, 42.196, 1.50905, 103.982, ''],
      ['T', '2.22831+5.49696i', 40.8817, 35.4046, 1.31192, 75.8493, ''],
    ]);
  });
  test('one figure at one node, by both methods', () => {
    expectPrinted('NET_MESHED_AT', [branches, sources, 't', 'ip', 400, 1.05, 'B'], 87.1291);
    expectPrinted('NET_MESHED_AT', [branches, sources, 'T', 'ip', 400], 75.8493);
    expectPrinted('NET_MESHED_AT', [branches, sources, 'T', 'Ik2', 400], 35.4046);
  });
  test('shares of the fault current', () => {
    expect(table('NET_CONTRIBUTION', branches, sources, 'T', 400)).toEqual([
      ['from', 'to', 'kA'], ['N', 'S', 5.26086], ['N', 'T', 17.5567], ['S', 'T', 23.4024], ['source', 'N', 22.6203], ['source', 'S', 18.2614],
    ]);
    expectPrinted('NET_CONTRIBUTION_AT', [branches, sources, 'T', 'T', 'S', 400], 23.4024);
    expectPrinted('NET_CONTRIBUTION_AT', [branches, sources, 'T', 'source', 'N', 400, 1.1], 23.6974);
    expectPrinted('NET_CONTRIBUTION_AT', [branches, sources, 'T', 'n', 'SOURCE', 400, 1.1], 23.6974);
  });
  test('positions of couplers and sources', () => {
    expect(table('NET_ARRANGEMENTS', coupled, feeding, 400)).toEqual([
      ['node', 'least kA', 'when', 'greatest kA', 'when', 'note'],
      ['N', 29.0889, 'open: N-S', 49.4074, 'all closed', ''],
      ['S', 22.8113, 'open: N-S', 48.0464, 'all closed', 'not fed in 1 of 4'],
      ['T', 21.4289, 'open: N-S', 29.861, 'all closed', ''],
    ]);
    expectPrinted('NET_ARRANGEMENTS_AT', [coupled, feeding, 'T', 'greatest', 400], 29.861);
    expectPrinted('NET_ARRANGEMENTS_AT', [coupled, feeding, 'S', 'least', 400, 0.95], 20.6388);
  });
});

describe('reading the tables of a mesh', () => {
  test('columns by heading, states, nodes without a way to a source', () => {
    const headed: Matrix = [['state', 'to', 'Z mΩ', 'from'], ['OUT', 'S', '0.9+1.1i', 'N'], ['', 'T', '3.4+2i', 'N'], ['on', 'U', 1, 'S']];
    expect(table('NET_MESHED', headed, [['Node', 'z_mohm'], ['N', '1.5+8.2i']], 400).map((row) => [row[0], row[6]])).toEqual([['node', 'note'], ['N', ''], ['S', 'not fed'], ['T', ''], ['U', 'not fed']]);
    expectRefused('NET_MESHED_AT', [headed, [['N', '1.5+8.2i']], 's', 'Ik3', 400], '#NUM!', 'node: S is not fed: it has no way to a source');
    expectRefused('NET_CONTRIBUTION', [headed, [['N', '1.5+8.2i']], 'U', 400], '#NUM!', 'node: U is not fed: it has no way to a source');
  });
  test('every source open: no node is fed', () => {
    expect(table('NET_MESHED', branches, [['N', 1, 'off']], 400).slice(1).map((row) => row[6])).toEqual(['not fed', 'not fed', 'not fed']);
    expect(table('NET_ARRANGEMENTS', branches, [['N', 1, 'off']], 400).slice(1).map((row) => row[5])).toEqual(['not fed', 'not fed', 'not fed']);
    expectRefused('NET_ARRANGEMENTS_AT', [branches, [['N', 1, 'off']], 'T', 'least', 400], '#NUM!', 'node: T is not fed: it has no way to a source');
  });
  test('islands do not touch', () => {
    const rows = table('NET_MESHED', [['A', 'B', 1], ['C', 'D', 1]], [['A', '1'], ['C', '3']], 400);
    expect(rows.slice(1).map((row) => row[1])).toEqual([1, 2, 3, 4].map(String));
    expect(table('NET_CONTRIBUTION', [['A', 'B', 1], ['C', 'D', 1]], [['A', '1'], ['C', '3']], 'B', 400).slice(1).map((row) => row[2])).toEqual([121.244, 0, 121.244, 0]);
  });
  test('a source alone, a source twice at one node, parallel branches', () => {
    expect(table('NET_MESHED', [['A', 'B', 4], ['B', 'A', 4]], [['A', 2], ['A', 2]], 400).slice(1).map((row) => row[1])).toEqual(['1', '3']);
    expect(table('NET_MESHED', [['A', 'B', 4]], [['A', 2], ['C', 7]], 400).slice(1).map((row) => [row[0], row[1]])).toEqual([['A', '2'], ['B', '6'], ['C', '7']]);
    // 1.05·400/√3 V over 3 mΩ, and half of it in each of two.
    expectPrinted('NET_CONTRIBUTION_AT', [[['A', 'B', 4], ['B', 'A', 4]], [['A', 2], ['A', 2]], 'B', 'A', 'B', 400], 80.829);
    expectPrinted('NET_CONTRIBUTION_AT', [[['A', 'B', 4], ['B', 'A', 4]], [['A', 2], ['A', 2]], 'B', 'source', 'A', 400], 80.829);
    expect(table('NET_CONTRIBUTION', [['A', 'B', 4], ['B', 'A', 4]], [['A', 2], ['A', 2]], 'B', 400).slice(1).map((row) => row[2])).toEqual([40.4145, 40.4145, 40.4145, 40.4145]);
  });
  test('nothing flows in an open branch', () => {
    const open: Matrix = [...branches, ['N', 'T', '1+1i', 'open'], ['T', 'V', 1, 'open']];
    expect(table('NET_CONTRIBUTION', open, sources, 'T', 400).slice(4, 6)).toEqual([['N', 'T', 0], ['T', 'V', 0]]);
    expectPrinted('NET_CONTRIBUTION_AT', [open, sources, 'T', 'N', 'T', 400], 17.5567);
    expect(run('NET_CONTRIBUTION_AT', open, sources, 'T', 'T', 'V', 400)).toBe(0);
    expectRefused('NET_CONTRIBUTION_AT', [branches, sources, 'T', 'source', 'T', 400], '#N/A', 'nothing joins source and T');
    expectRefused('NET_CONTRIBUTION_AT', [branches, sources, 'T', 'N', 'Q', 400], '#N/A', 'nothing joins N and Q');
    expectRefused('NET_CONTRIBUTION_AT', [branches, sources, 'Q', 'N', 'T', 400], '#N/A', 'node: no node named Q');
  });
  test.each<[string, Matrix, string, string]>([
    ['blank name', [['N', 'S', 1], ['N', '', 1]], '#N/A', 'branches row 2: missing: to'],
    ['blank impedance', [['N', 'S', null]], '#N/A', 'branches row 1: missing: z_mohm'],
    ['to itself', [['N', 'S', 1], ['N', 'n ', 1]], '#VALUE!', 'branches row 2: from and to are the same'],
    ['zero impedance', [['N', 'S', 1], ['N', 'T', '0+0i']], '#NUM!', 'branches row 2: zero impedance: give the coupler its length or join the nodes'],
    ['next to zero', [['N', 'S', '1E-9']], '#NUM!', 'branches row 1: zero impedance: give the coupler its length or join the nodes'],
    ['bad impedance', [['from', 'to', 'z_mohm'], ['N', 'S', 'cable']], '#VALUE!', 'branches row 2: z_mohm: got "cable", takes a number in mΩ'],
    ['negative', [['N', 'S', '1-1i']], '#VALUE!', 'branches row 1: z_mohm: got "1-1i", takes R and X of 0 or more'],
    ['unknown state', [['N', 'S', 1, 'ajar']], '#VALUE!', 'branches row 1: state: got "ajar", takes closed (in, on), open (out, off)'],
    ['either', [['N', 'S', 1, 'either']], '#VALUE!', 'branches row 1: state: got "either", takes closed (in, on), open (out, off)'],
    ['a state in figures', [['N', 'S', 1, 0]], '#VALUE!', 'branches row 1: state: got 0, takes closed (in, on), open (out, off)'],
    ['the supply as a node', [['Source', 'S', 1]], '#VALUE!', 'branches row 1: from: Source is no node: sources stand in their own table'],
    ['too few columns', [['N', 'S']], '#VALUE!', 'branches: got 2 columns, takes from | to | z_mohm | [state]'],
  ])('%s', (_what, rows, code, message) => expectRefused('NET_MESHED', [rows, sources, 400], code as CellError['code'], message));
  test('faults of the sources table, and which comes first', () => {
    expectRefused('NET_MESHED', [branches, [['N', 0]], 400], '#NUM!', 'sources row 1: zero impedance: give the coupler its length or join the nodes');
    expectRefused('NET_MESHED', [branches, [['', 1]], 400], '#N/A', 'sources row 1: missing: node');
    expectRefused('NET_MESHED', [branches, '', 400], '#N/A', 'missing: sources');
    expectRefused('NET_MESHED', [[['N', 'N', 1]], '', 400], '#VALUE!', 'branches row 1: from and to are the same');
    expectRefused('NET_MESHED', [branches, sources, 400, 1.05, 'A'], '#VALUE!', 'method: got "A", takes B (method b) · C (method c)');
    const error = new CellError('#DIV/0!');
    expect(run('NET_MESHED', [['N', 'S', error]], sources, 400)).toBe(error);
  });
  test('where a blank arrives as zero it is neither closed nor open', () => {
    const value = outcomeOf('NET_MESHED', [[['N', 'S', 1, 0]], sources, 400], { blankArrivesAsZero: true }).value;
    expect(value).toEqual(new CellError('#VALUE!', 'branches row 1: state is blank or zero: write closed or open'));
  });
  test('rows that stand either way: 6 at most', () => {
    const rows: Matrix = Array.from({ length: 5 }, (_, i) => ['N', `S${i}`, 1, 'either']);
    expect(table('NET_ARRANGEMENTS', rows, [['N', 1], ['S0', 1, 'either']], 400)).toHaveLength(7);
    expectRefused('NET_ARRANGEMENTS', [[...rows, ['S1', 'S2', 1, 'EITHER']], [['N', 1], ['S0', 1, 'either']], 400], '#NUM!', 'branches: 7 rows of branches and sources are marked either, takes up to 6');
  });
  test('no fault level behind next to no impedance', () => {
    expect(table('NET_MESHED', [['A', 'B', 1]], [['A', 0.05]], 400).slice(1).map((row) => row[6])).toEqual(['size of Z is below 0.1 mΩ: no fault level', '']);
    expectRefused('NET_MESHED_AT', [[['A', 'B', 1]], [['A', 0.05]], 'A', 'Ik3', 400], '#NUM!', 'size of Z is below 0.1 mΩ: no fault level');
  });
  test('a table changed in place is read anew', () => {
    const changing: Matrix = [['A', 'B', 4]];
    const at = (printed: string) => expectPrinted('NET_MESHED_AT', [changing, [['A', 2]], 'B', 'Z', 400], printed);
    at('6');
    changing[0]![2] = 5;
    at('7');
    changing[0]!.push('open');
    expectRefused('NET_MESHED_AT', [changing, [['A', 2]], 'B', 'Z', 400], '#NUM!', 'node: B is not fed: it has no way to a source');
  });
});

describe('looking a table over', () => {
  const faulty: Matrix = [['MSB', 'source', '0.2+0.4i'], ['DB1', 'MSB', '6.2+2.4i'], ['DB2', 'DB9', '12+3i'], ['P1', 'DB2', '25+4i'], ['L1', 'L2', '5+1i'], ['L2', 'L1', '5+1i']];
  test.each<[string, unknown[], string]>([
    ['boards', [faulty], 'row 3: fed from unknown board DB9; 3 more'],
    ['sound boards', [faulty.slice(0, 2)], 'no findings'],
    ['one finding', [[['A', 'source', 1], ['A', 'source', 1]].slice(0, 1).concat([['B', 'C', 1]])], 'row 2: fed from unknown board C'],
    ['a sound mesh', [branches, sources], 'no findings'],
    ['a mesh', [[['N', 'S', '0.9+1.1i'], ['N', 'N', '1+1i'], ['X', 'Y', '1+1i']], [['N', '1.5+8.2i']]], 'branches row 2: from and to are the same; 2 more'],
    ['either counts as closed', [[['N', 'S', 1, 'either']], [['N', 1, 'either']]], 'no findings'],
    ['a source on no branch', [[['N', 'S', 1]], [['node', 'z_mohm'], ['N', 1], ['Q', 1]]], 'sources row 3: Q is on no branch'],
    ['zero impedance and an unknown state', [[['N', 'S', 0], ['N', 'S', 1, 'x'], ['N', 'S', 1]], [['N', 1]]], 'branches row 1: zero impedance: give the coupler its length or join the nodes; 1 more'],
    ['nodes that are not fed', [[['N', 'S', 1, 'open']], [['N', 1]]], 'node S: not fed'],
    ['a table of another shape', [[['A', 'source']]], 'table: got 2 columns, takes board | fed_from | z_mohm | [z_return_mohm]'],
    ['a mesh of another shape', [[['A', 'B']], [['A', 1]]], 'branches: got 2 columns, takes from | to | z_mohm | [state]'],
    ['an error cell', [[['A', 'source', new CellError('#N/A')]]], 'row 1: z_mohm: #N/A'],
  ])('%s', (_what, argv, words) => expect(run('NET_CHECK', ...(argv as Matrix[]))).toBe(words));
  test('no table', () => expectRefused('NET_CHECK', [''], '#N/A', 'missing: table'));
});

test('a call says what it used', () => {
  expect(run('SHOW_WORKING', 'NET_MESHED_AT', branches, sources, 'T', 'ip', 400)).toBe('Ik3 = c·Un/(√3·|Z_kk|), Z = Y⁻¹; branches 3 rows, sources 2 rows, node T, quantity ip, volts_V 400 V, c 1.05, method C; 75.85 kA peak');
  expect(run('SHOW_STEPS', 'NET_MESHED_AT', branches, sources, 'T', 'ip', 400)).toContainEqual(['κ = 1.02+0.98·e^(−3·0.4·Rc/Xc), method C', '1.31192']);
  // 1.05·400/√3 V over 2 + 4 mΩ.
  expect(run('SHOW_STEPS', 'NET_CONTRIBUTION_AT', [['A', 'B', 4]], [['A', 2]], 'B', 'A', 'B', 400)).toEqual(expect.arrayContaining([['E = c·Un/√3', '242.487 V'], ['I = |Σ (V_from−V_to)/z|', '40.4145 kA']]));
});
