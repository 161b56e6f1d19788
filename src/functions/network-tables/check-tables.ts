import { inWords, meshFindings, radialFindings } from '../../core/network/findings';
import { Mesh } from '../../core/network/mesh';
import { RadialNetwork } from '../../core/network/radial';
import { complex } from '../../core/complex';
import { Refusal } from '../../core/refusal';
import { boardRows } from './boards';
import { type OnFault, branchRows, sourceRows } from './mesh-rows';
import type { TableCells } from './table-cells';

/** Findings of a table that cannot be read at all stand as its only ones. */
function lookedOver(find: () => string[]): string {
  try {
    return inWords(find());
  } catch (thrown) {
    if (thrown instanceof Refusal) return inWords([thrown.message]);
    throw thrown;
  }
}

/** What is wrong with a boards table. The impedance of the supply plays no part in it. */
export const checkRadial = (table: TableCells): string =>
  lookedOver(() => radialFindings(new RadialNetwork(boardRows(table), complex(0, 0), complex(0, 0))));

/** What is wrong with the tables of a mesh. */
export const checkMesh = (branches: TableCells, sources: TableCells): string =>
  lookedOver(() => {
    const findings: string[] = [];
    const noted = (table: string): OnFault => (row, { note }) => { findings.push(`${table} row ${row}: ${note}`); };
    const anyState = { either: true };
    const sound = branchRows(branches, anyState, noted('branches'));
    const feeding = sourceRows(sources, anyState, noted('sources'));
    return [...findings, ...meshFindings(new Mesh(sound, feeding), (s) => feeding[s]!.row)];
  });
