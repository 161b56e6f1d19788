import { type Box, inBox } from './address';

const TALL = 64;

/** Many rectangles, found by a cell in them without looking at all. */
export class Areas<Area extends { readonly box: Box }> {
  private readonly byRow = new Map<number, Area[]>();
  private readonly tall: Area[] = [];

  constructor(areas: Iterable<Area>) {
    for (const area of areas) {
      const { top, bottom } = area.box;
      if (bottom - top >= TALL) this.tall.push(area);
      else for (let row = top; row <= bottom; row++) this.list(row).push(area);
    }
  }

  find(row: number, column: number): Area | undefined {
    const holds = ({ box }: Area): boolean => inBox(box, row, column);
    return this.byRow.get(row)?.find(holds) ?? this.tall.find(holds);
  }

  private list(row: number): Area[] {
    let list = this.byRow.get(row);
    if (!list) this.byRow.set(row, (list = []));
    return list;
  }
}
