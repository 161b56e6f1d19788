import type { Complex } from '../core/complex';
import { threePhaseFault } from '../core/fault/three-phase';
import { type FaultLevels, earthFaultLevel, faultLevels, withoutLevel } from '../core/network/fault-levels';
import { meshLevels, withoutMeshLevel } from '../core/network/mesh-levels';
import { type RadialNetwork, chain } from '../core/network/radial';
import { faultOfRow } from '../core/network/row-fault';
import { notAvailable, outOfRange } from '../core/refusal';
import { silent } from '../core/working';
import { type Table, family, member, worksheetFunction, worksheetFunctions } from './kernel/declaration';
import { impedance } from './kernel/impedance-kinds';
import { flag, ratio, text, word } from './kernel/kinds';
import { checkMesh, checkRadial } from './network-tables/check-tables';
import { type Boards, type MeshAnswers, anyNetworkTable, boardsTable, branchesTable, optionalSources, sourcesTable } from './network-tables/tables';
import { volts } from './shared-parameters';

const IEC_60909 = 'IEC 60909-0:2016';
const FIXED = { either: false } as const;
const EITHER = { either: true } as const;

const c = () => ratio('voltage factor: 0.95 with hot impedances for the least case', { atLeast: 0.9, upTo: 1.1, default: 1.05 });
const headers = () => flag('first row holds the headings', { default: true });
const source = () => impedance('impedance of the supply at the first board', {});
const sourceLoop = () => impedance('the supply’s part of the fault loop', { defaultWords: 'source_mohm' });
const method = () => word('how the peak factor is found', { B: ['method b'], C: ['method c'] }, { default: 'C' });
const node = (about: string) => text(about, {});

const QUANTITIES = { Z: [], Ik3: ['ik', '3ph'], Ik2: ['2ph'], kappa: ['κ', 'peak factor'], ip: ['peak'] } as const;
type Quantity = keyof typeof QUANTITIES | 'Ik1';
const UNITS: Readonly<Record<Quantity, string>> = { Z: 'mΩ', Ik3: 'kA', Ik2: 'kA', kappa: '', ip: 'kA peak', Ik1: 'kA' };

const levelCells = ({ z, ik3, ik2, kappa, ip }: FaultLevels): (number | Complex)[] => [z, ik3, ik2, kappa, ip];
const levelOf = ({ z, ik3, ik2, kappa, ip }: FaultLevels, quantity: keyof typeof QUANTITIES): number | Complex => ({ Z: z, Ik3: ik3, Ik2: ik2, kappa, ip })[quantity];

/** Place of a board whose row is sound; any other is refused with its row and the reason. */
function soundBoard(boards: Boards, network: RadialNetwork, board: string): number {
  const place = network.place(board);
  if (place === undefined) throw notAvailable('board', `no board named ${board}`);
  const fault = network.fault(place);
  if (fault) throw faultOfRow(boards.name, network.rows[place]!.row, fault);
  return place;
}

/** Ik1 as a cell: a level, or why there is none. */
function earthLevelCell(loop: Complex | undefined, volts_V: number, factor: number): number | string {
  return loop === undefined || withoutLevel(loop) ? 'not shown' : earthFaultLevel(loop, volts_V, factor);
}

function radialTable(network: RadialNetwork, volts_V: number, factor: number): Table['rows'] {
  return network.rows.map(({ board }, place) => {
    const fault = network.fault(place) ?? withoutLevel(network.impedance(place));
    if (fault) return [board, '', '', '', '', '', '', fault.note];
    const levels = faultLevels(network.impedance(place), volts_V, factor, 'plain');
    return [board, ...levelCells(levels), earthLevelCell(network.loopImpedance(place), volts_V, factor), ''];
  });
}

const netRadial = worksheetFunctions({
  summary: 'Fault levels at every board of a tree-shaped network (table), or one figure at one board.',
  formula: 'Z = Z(fed from)+z; Ik3 = c·Un/(√3·|Z|); Ik1 = c·Un/(√3·|Z_loop|)',
  basis: [{ source: IEC_60909, clause: '7 and 8.1.1', fromMemory: true }],
  caution: 'Give hot impedances and c 0.95 for the least case; the table does not heat them. Tree only: with a closed ring use NET_MESHED. κ is the plain one.',
  examples: [
    '=JW.NET_RADIAL({"board","fed_from","z_mohm","z_return_mohm";"MSB","source","0.2+0.4i","0.3+0.5i";"DB1","MSB","6.2+2.4i","9.1+2.6i"},"1.9+9.4i",415)',
    '=JW.NET_RADIAL_AT({"MSB","source","0.2+0.4i";"DB1","MSB","6.2+2.4i"},"1.9+9.4i","DB1","Ik3",415)',
  ],
  members: [
    member({
      name: 'NET_RADIAL',
      summary: 'Fault levels at every board of a tree-shaped network, as a table.',
      parameters: { boards: boardsTable(), source_mohm: source(), volts_V: volts(), c: c(), source_loop_mohm: sourceLoop(), headers: headers() },
      result: 'table',
      spill: true,
      compute: ({ boards, source_mohm, volts_V, c: factor, source_loop_mohm }) => ({
        headings: ['board', 'Z mΩ', 'Ik3 kA', 'Ik2 kA', 'kappa', 'ip kA', 'Ik1 kA', 'note'],
        rows: radialTable(boards.network(source_mohm, source_loop_mohm ?? source_mohm), volts_V, factor),
      }),
    }),
    member({
      name: 'NET_RADIAL_AT',
      summary: 'One figure at one board of a tree-shaped network.',
      parameters: {
        boards: boardsTable(),
        source_mohm: source(),
        board: node('name of the board, any case'),
        quantity: word('figure wanted', { ...QUANTITIES, Ik1: ['earth', 'loop'] }, {}),
        volts_V: volts(),
        c: c(),
        source_loop_mohm: sourceLoop(),
      },
      result: 'as asked',
      unit: ({ quantity }) => UNITS[quantity],
      compute: ({ boards, source_mohm, board, quantity, volts_V, c: factor, source_loop_mohm }, work) => {
        const network = boards.network(source_mohm, source_loop_mohm ?? source_mohm);
        const place = soundBoard(boards, network, board);
        // Only where somebody looks: a path may be as long as the table.
        const path = work === silent ? '' : chain(['source', ...network.path(place).map((at) => network.rows[at]!.board)]);
        const refuse = (z: Complex): void => {
          const fault = withoutLevel(z);
          if (fault) throw faultOfRow(boards.name, network.rows[place]!.row, fault);
        };
        if (quantity === 'Ik1') {
          const loop = network.loopImpedance(place);
          if (!loop) throw notAvailable(undefined, 'missing: z_return_mohm on the path');
          refuse(loop);
          work.step('Z_loop', 'Z_loop,source+Σ(z+z_return)', { path }, [loop, 'mΩ']);
          return earthFaultLevel(loop, volts_V, factor, work);
        }
        const z = network.impedance(place);
        refuse(z);
        work.step('Z', 'Z_source+Σ z', { path }, [z, 'mΩ']);
        return levelOf(faultLevels(z, volts_V, factor, 'plain', z, work), quantity);
      },
    }),
  ],
});

const netProfile = worksheetFunction({
  name: 'NET_PROFILE',
  summary: 'Fault levels on the way from the source to one board, for a chart.',
  formula: 'Z = Z(fed from)+z; Ik3 = c·Un/(√3·|Z|); Ik1 = c·Un/(√3·|Z_loop|)',
  parameters: {
    boards: boardsTable(),
    source_mohm: source(),
    board: node('name of the last board, any case'),
    volts_V: volts(),
    c: c(),
    source_loop_mohm: sourceLoop(),
    headers: headers(),
  },
  result: 'table',
  spill: true,
  basis: [{ source: IEC_60909, clause: '7', fromMemory: true }],
  caution: 'Its scalar partner is NET_RADIAL_AT, board by board.',
  examples: ['=JW.NET_PROFILE({"MSB","source","0.2+0.4i","0.3+0.5i";"DB1","MSB","6.2+2.4i","9.1+2.6i"},"1.9+9.4i","DB1",415)'],
  compute: ({ boards, source_mohm, board, volts_V, c: factor, source_loop_mohm }) => {
    const loop = source_loop_mohm ?? source_mohm;
    const network = boards.network(source_mohm, loop);
    const step = (name: string, z: Complex, zLoop: Complex | undefined): (string | number | Complex)[] =>
      [name, z, withoutLevel(z) ? '' : threePhaseFault(z, volts_V, factor), earthLevelCell(zLoop, volts_V, factor)];
    return {
      headings: ['board', 'Z mΩ', 'Ik3 kA', 'Ik1 kA'],
      rows: [
        step('source', source_mohm, loop),
        ...network.path(soundBoard(boards, network, board)).map((at) => step(network.rows[at]!.board, network.impedance(at), network.loopImpedance(at))),
      ],
    };
  },
});

/** Number of a node that the tables name. */
function knownNode(answers: MeshAnswers, name: string): number {
  const found = answers.mesh.node(name);
  if (found === undefined) throw notAvailable('node', `no node named ${name}`);
  return found;
}

/** Number of a node that a source reaches. */
function fedNode(answers: MeshAnswers, name: string): number {
  const found = knownNode(answers, name);
  const fault = withoutMeshLevel(answers.solved, found);
  if (fault) throw fault.error;
  return found;
}

const netMeshed = worksheetFunctions({
  summary: 'Fault levels in a network with rings and several sources (table), or one figure at one node.',
  formula: 'Ik3 = c·Un/(√3·|Z_kk|), Z = Y⁻¹',
  basis: [{ source: IEC_60909, clause: '7.2.2 and 8.1.2 methods B, C', fromMemory: true }],
  caution: 'All sources are taken at one driving voltage. κ is never the plain one here.',
  examples: [
    '=JW.NET_MESHED({"N","S","0.9+1.1i";"N","T","3.4+2i";"S","T","2.1+1.6i"},{"N","1.5+8.2i";"S","2.2+10.4i"},400)',
    '=JW.NET_MESHED_AT({"N","S","0.9+1.1i";"N","T","3.4+2i";"S","T","2.1+1.6i"},{"N","1.5+8.2i";"S","2.2+10.4i"},"T","ip",400)',
  ],
  members: [
    member({
      name: 'NET_MESHED',
      summary: 'Fault levels at every node of a network with rings and several sources, as a table.',
      parameters: { branches: branchesTable(FIXED), sources: sourcesTable(FIXED), volts_V: volts(), c: c(), method: method(), headers: headers() },
      result: 'table',
      spill: true,
      compute: ({ branches, sources, volts_V, c: factor, method: by }) => {
        const { mesh, solved } = branches.with(sources);
        return {
          headings: ['node', 'Z mΩ', 'Ik3 kA', 'Ik2 kA', 'kappa', 'ip kA', 'note'],
          rows: mesh.nodes.map((name, number) => {
            const fault = withoutMeshLevel(solved, number);
            return fault ? [name, '', '', '', '', '', fault.note] : [name, ...levelCells(meshLevels(solved, number, volts_V, factor, by)), ''];
          }),
        };
      },
    }),
    member({
      name: 'NET_MESHED_AT',
      summary: 'One figure at one node of a network with rings and several sources.',
      parameters: {
        branches: branchesTable(FIXED),
        sources: sourcesTable(FIXED),
        node: node('name of the node, any case'),
        quantity: word('figure wanted', QUANTITIES, {}),
        volts_V: volts(),
        c: c(),
        method: method(),
      },
      result: 'as asked',
      unit: ({ quantity }) => UNITS[quantity],
      compute: ({ branches, sources, node: name, quantity, volts_V, c: factor, method: by }, work) => {
        const answers = branches.with(sources);
        return levelOf(meshLevels(answers.solved, fedNode(answers, name), volts_V, factor, by, work), quantity);
      },
    }),
  ],
});

const netContribution = worksheetFunctions({
  summary: 'How the fault current at one node is shared among branches and sources.',
  formula: '|V_from−V_to|/|z|, V_i = E·(1−Z_ik/Z_kk), E = c·Un/√3',
  basis: [{ source: 'nodal method' }, { source: IEC_60909, clause: '7.2.2', fromMemory: true }],
  caution: 'Sizes of vectors: they do not add up arithmetically. Nothing flows in an open branch, nor in an island without the fault.',
  examples: [
    '=JW.NET_CONTRIBUTION({"N","S","0.9+1.1i";"N","T","3.4+2i";"S","T","2.1+1.6i"},{"N","1.5+8.2i";"S","2.2+10.4i"},"T",400)',
    '=JW.NET_CONTRIBUTION_AT({"N","S","0.9+1.1i";"N","T","3.4+2i";"S","T","2.1+1.6i"},{"N","1.5+8.2i";"S","2.2+10.4i"},"T","T","S",400)',
  ],
  members: [
    member({
      name: 'NET_CONTRIBUTION',
      summary: 'What each branch and each source gives to the fault current at one node, as a table.',
      parameters: { branches: branchesTable(FIXED), sources: sourcesTable(FIXED), node: node('name of the node at fault, any case'), volts_V: volts(), c: c(), headers: headers() },
      result: 'table',
      spill: true,
      compute: ({ branches, sources, node: name, volts_V, c: factor }) => {
        const answers = branches.with(sources);
        const shares = answers.contributions(fedNode(answers, name));
        const emf = (factor * volts_V) / Math.sqrt(3);
        return {
          headings: ['from', 'to', 'kA'],
          rows: [
            ...answers.mesh.branches.map(({ from, to }, b) => [from, to, emf * shares.branch(b).abs()]),
            ...answers.mesh.sources.map(({ node: at }, s) => ['source', at, emf * shares.source(s).abs()]),
          ],
        };
      },
    }),
    member({
      name: 'NET_CONTRIBUTION_AT',
      summary: 'What flows between two nodes, or from the sources of one, into the fault at a node.',
      parameters: {
        branches: branchesTable(FIXED),
        sources: sourcesTable(FIXED),
        node: node('name of the node at fault, any case'),
        from: node('one end of the branch, or source'),
        to: node('the other end, or source'),
        volts_V: volts(),
        c: c(),
      },
      result: 'kA',
      compute: ({ branches, sources, node: name, from, to, volts_V, c: factor }, work) => {
        const answers = branches.with(sources);
        const share = answers.contributions(fedNode(answers, name)).between(from, to);
        if (share === undefined) throw notAvailable(undefined, `nothing joins ${from} and ${to}`);
        const emf = (factor * volts_V) / Math.sqrt(3);
        work.step('E', 'c·Un/√3', { c: factor, Un: [volts_V, 'V'] }, [emf, 'V']);
        work.step('I', '|Σ (V_from−V_to)/z|', { from, to, E: [emf, 'V'] }, [emf * share, 'kA']);
        return emf * share;
      },
    }),
  ],
});

const netArrangements = worksheetFunctions({
  summary: 'Least and greatest three-phase fault over every position of the couplers and sources marked "either".',
  formula: 'c·Un/(√3·|Z_kk|), each row marked either taken closed and open',
  basis: [{ source: IEC_60909, clause: '5.2 (greatest and least currents)', fromMemory: true }],
  caution: 'Least case: call it again with hot impedances and c 0.95.',
  examples: [
    '=JW.NET_ARRANGEMENTS({"N","S","0.9+1.1i","either";"N","T","3.4+2i","closed"},{"N","1.5+8.2i","closed";"S","2.2+10.4i","either"},400)',
    '=JW.NET_ARRANGEMENTS_AT({"N","S","0.9+1.1i","either";"N","T","3.4+2i","closed"},{"N","1.5+8.2i","closed";"S","2.2+10.4i","either"},"S","least",400,0.95)',
  ],
  members: [
    member({
      name: 'NET_ARRANGEMENTS',
      summary: 'Least and greatest three-phase fault at each node over every position of the couplers and sources marked "either", as a table.',
      parameters: { branches: branchesTable(EITHER), sources: sourcesTable(EITHER), volts_V: volts(), c: c(), headers: headers() },
      result: 'table',
      spill: true,
      compute: ({ branches, sources, volts_V, c: factor }) => {
        const { mesh, extremes } = branches.with(sources);
        return {
          headings: ['node', 'least kA', 'when', 'greatest kA', 'when', 'note'],
          rows: extremes.nodes.map(({ least, greatest, dead }, number) => {
            const name = mesh.nodes[number]!;
            if (!least || !greatest) return [name, '', '', '', '', 'not fed'];
            const fault = withoutLevel(greatest.z);
            if (fault) return [name, '', '', '', '', fault.note];
            return [
              name,
              threePhaseFault(least.z, volts_V, factor), least.when,
              threePhaseFault(greatest.z, volts_V, factor), greatest.when,
              dead > 0 ? `not fed in ${dead} of ${extremes.arrangements}` : '',
            ];
          }),
        };
      },
    }),
    member({
      name: 'NET_ARRANGEMENTS_AT',
      summary: 'Least or greatest three-phase fault at one node over every position of the couplers and sources marked "either".',
      parameters: {
        branches: branchesTable(EITHER),
        sources: sourcesTable(EITHER),
        node: node('name of the node, any case'),
        extreme: word('which of the two', { least: ['min', 'lowest'], greatest: ['max', 'highest'] }, {}),
        volts_V: volts(),
        c: c(),
      },
      result: 'kA',
      compute: ({ branches, sources, node: name, extreme, volts_V, c: factor }, work) => {
        const answers = branches.with(sources);
        const found = answers.extremes.nodes[knownNode(answers, name)]![extreme];
        if (!found) throw outOfRange('node', `${name} is not fed: it has no way to a source`);
        const fault = withoutLevel(found.z);
        if (fault) throw fault.error;
        work.step('Z_kk', 'diagonal of Y⁻¹', { when: found.when, arrangements: answers.extremes.arrangements }, [found.z, 'mΩ']);
        return threePhaseFault(found.z, volts_V, factor, work);
      },
    }),
  ],
});

const netCheck = worksheetFunction({
  name: 'NET_CHECK',
  summary: 'Looks over a network table and says what is wrong with it: the first finding, and how many more.',
  formula: '',
  parameters: { table: anyNetworkTable('table of boards, or of branches where sources are given'), sources: optionalSources() },
  result: 'text',
  basis: [{ source: 'own rules' }],
  caution: 'It reads the table; whether the impedances are right it cannot know.',
  examples: [
    '=JW.NET_CHECK({"MSB","source","0.2+0.4i";"DB1","MSB","6.2+2.4i";"DB2","DB9","12+3i"})',
    '=JW.NET_CHECK({"N","S","0.9+1.1i";"N","N","1+1i";"X","Y","1+1i"},{"N","1.5+8.2i"})',
  ],
  compute: ({ table, sources }) => (sources ? checkMesh({ ...table, name: 'branches' }, sources) : checkRadial(table)),
});

export const network = family('network', [netRadial, netMeshed, netContribution, netArrangements, netCheck, netProfile]);
