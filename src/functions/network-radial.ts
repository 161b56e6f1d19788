import type { Complex } from '../core/complex';
import { threePhaseFault } from '../core/fault/three-phase';
import { earthFaultLevel, faultLevels, withoutLevel } from '../core/network/fault-levels';
import { type RadialNetwork, chain } from '../core/network/radial';
import { faultOfRow } from '../core/network/row-fault';
import { notAvailable } from '../core/refusal';
import { silent } from '../core/working';
import { type Table, member, worksheetFunction, worksheetFunctions } from './kernel/declaration';
import { impedance } from './kernel/impedance-kinds';
import { word } from './kernel/kinds';
import { IEC_60909, QUANTITIES, UNITS, c, headers, levelCells, levelOf, node } from './network-tables/parameters';
import { type Boards, boardsTable } from './network-tables/tables';
import { volts } from './shared-parameters';

const source = () => impedance('impedance of the supply at the first board', {});
const sourceLoop = () => impedance('the supply’s part of the fault loop', { defaultWords: 'source_mohm' });

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

export const netRadial = worksheetFunctions({
  summary: 'Fault levels at every board of a tree-shaped network (table), or one figure at one board.',
  tasks: ['fault levels at all boards', 'radial distribution', 'board schedule'],
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

export const netProfile = worksheetFunction({
  name: 'NET_PROFILE',
  summary: 'Fault levels on the way from the source to one board, for a chart.',
  tasks: ['fault level along the path', 'from transformer to final circuit', 'chart of kA'],
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
