import { threePhaseFault } from '../core/fault/three-phase';
import { withoutLevel } from '../core/network/fault-levels';
import { meshLevels, withoutMeshLevel } from '../core/network/mesh-levels';
import { notAvailable, outOfRange } from '../core/refusal';
import { member, worksheetFunctions } from './kernel/declaration';
import { word } from './kernel/kinds';
import { IEC_60909, QUANTITIES, UNITS, c, headers, levelCells, levelOf, method, node } from './network-tables/parameters';
import { type MeshAnswers, branchesTable, sourcesTable } from './network-tables/tables';
import { volts } from './shared-parameters';

const FIXED = { either: false } as const;
const EITHER = { either: true } as const;

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

export const netMeshed = worksheetFunctions({
  summary: 'Fault levels in a network with rings and several sources (table), or one figure at one node.',
  tasks: ['ring main', 'several sources', 'fault level at every board, meshed'],
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

export const netContribution = worksheetFunctions({
  summary: 'How the fault current at one node is shared among branches and sources.',
  tasks: ['who feeds the fault', 'contribution of each source', 'share of the fault current'],
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

export const netArrangements = worksheetFunctions({
  summary: 'Least and greatest three-phase fault over every position of the couplers and sources marked "either".',
  tasks: ['bus couplers open or closed', 'worst case of switching', 'standby, parallel operation'],
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
      cautions: ({ branches, sources, node: name }) => {
        const answers = branches.with(sources);
        const { dead } = answers.extremes.nodes[knownNode(answers, name)]!;
        return [dead > 0 && `not fed in ${dead} of ${answers.extremes.arrangements} arrangements: these are left out`];
      },
    }),
  ],
});
