import type { Complex } from '../../core/complex';
import { counted } from '../../core/figure';
import { type Extremes, extremesOf } from '../../core/network/arrangements';
import type { BoardRow } from '../../core/network/board-row';
import { Contributions } from '../../core/network/contribution';
import { type BranchRow, Mesh, SolvedMesh, type SourceRow } from '../../core/network/mesh';
import { RadialNetwork } from '../../core/network/radial';
import type { Argument } from '../kernel/cell';
import { type CommonOptions, type Kind, type Reading, kind } from '../kernel/kind';
import { boardRows } from './boards';
import { Kept, Remembered, once } from './kept';
import { type MeshOptions, type Numbered, branchRows, sourceRows } from './mesh-rows';
import { type TableCells, tableCells } from './table-cells';

/** A boards table. */
export class Boards {
  private readonly solved = new Remembered<readonly [Complex, Complex], RadialNetwork>(4);
  constructor(readonly name: string, readonly rows: readonly BoardRow[]) {}
  network(source: Complex, sourceLoop: Complex): RadialNetwork {
    const equal = (a: Complex, b: Complex): boolean => a.re === b.re && a.im === b.im;
    return this.solved.of([source, sourceLoop], ([s, l]) => equal(s, source) && equal(l, sourceLoop), () => new RadialNetwork(this.rows, source, sourceLoop));
  }
}

/** A sources table of a mesh. */
export interface Sources {
  readonly name: string;
  readonly rows: readonly Numbered<SourceRow>[];
}

/** A branches table and, for each sources table that came with it, the mesh of the two. */
export class Branches {
  private readonly meshes = new Remembered<Sources, MeshAnswers>(4);
  constructor(readonly name: string, readonly rows: readonly Numbered<BranchRow>[]) {}
  with(sources: Sources): MeshAnswers {
    return this.meshes.of(sources, (other) => other === sources, () => new MeshAnswers(new Mesh(this.rows, sources.rows)));
  }
}

/** What can be asked of one mesh; each is worked when first asked. */
export class MeshAnswers {
  private readonly solve = once(() => new SolvedMesh(this.mesh));
  private readonly findExtremes = once(() => extremesOf(this.mesh));
  private readonly contributionsFound = new Remembered<number, Contributions>(16);
  constructor(readonly mesh: Mesh) {}
  get solved(): SolvedMesh {
    return this.solve();
  }
  get extremes(): Extremes {
    return this.findExtremes();
  }
  contributions(node: number): Contributions {
    return this.contributionsFound.of(node, (other) => other === node, () => new Contributions(this.solved, node));
  }
}

const keptBoards = new Kept<Boards>();
const keptMesh = { fixed: meshKept(), either: meshKept() };
function meshKept(): { branches: Kept<Branches>; sources: Kept<Sources> } {
  return { branches: new Kept<Branches>(), sources: new Kept<Sources>() };
}
const keptOf = ({ either }: MeshOptions) => (either ? keptMesh.either : keptMesh.fixed);

const tableKind = <T extends { rows: ArrayLike<unknown> }>(about: string, make: (cells: TableCells) => T): Kind<T> =>
  kind<T, CommonOptions<T>>({
    type: 'table', shape: 'range', about, options: {},
    read: (argument: Argument, name: string, reading: Reading) => make(tableCells(argument, name, reading)),
    show: ({ rows }) => counted(rows.length, 'row'),
  });

export const boardsTable = (): Kind<Boards> =>
  tableKind('table of boards: board | fed_from | z_mohm | [z_return_mohm], with or without these headings', (cells) =>
    keptBoards.of(cells, () => new Boards(cells.name, boardRows(cells))));

const states = ({ either }: MeshOptions): string => `state closed, open${either ? ' or either' : ''}; blank is closed`;

export const branchesTable = (options: MeshOptions): Kind<Branches> =>
  tableKind(`table of branches: from | to | z_mohm | [state], with or without these headings; ${states(options)}`, (cells) =>
    keptOf(options).branches.of(cells, () => new Branches(cells.name, branchRows(cells, options))));

export const sourcesTable = (options: MeshOptions): Kind<Sources> =>
  tableKind(`table of sources: node | z_mohm | [state], with or without these headings; ${states(options)}`, (cells) =>
    keptOf(options).sources.of(cells, () => ({ name: cells.name, rows: sourceRows(cells, options) })));

/** A table of any of these forms, as it stands. */
export const anyNetworkTable = (about: string): Kind<TableCells> => tableKind(about, (cells) => cells);
export const optionalSources = (): Kind<TableCells | undefined> => ({
  ...anyNetworkTable('table of sources, where the first is one of branches: node | z_mohm | [state]'),
  optional: true,
  fallbackWords: 'radial table',
});
