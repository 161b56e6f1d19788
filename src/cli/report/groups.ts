import type { FileFinding } from '../checked-file';

/** The same finding in cells one under the other. */
export interface FindingGroup {
  readonly first: FileFinding;
  readonly members: readonly FileFinding[];
  /** `X9`, or `X9:X20`. */
  readonly cells: string;
}

const placeOf = (cell: string): { column: string; row: number } => {
  const [, column = '', row = '0'] = /^([A-Z]*)(\d*)$/.exec(cell) ?? [];
  return { column, row: Number(row) };
};

/** Findings that a reader takes in at once are put together; nothing is left out. */
export function grouped(findings: readonly FileFinding[]): FindingGroup[] {
  const groups: FileFinding[][] = [];
  const open = new Map<string, FileFinding[]>();
  for (const finding of findings) {
    const { column, row } = placeOf(finding.cell);
    const key = JSON.stringify([finding.class, finding.kind, finding.sheet, column, finding.reason, finding.clause]);
    const group = open.get(key);
    if (group && finding.cell !== '' && placeOf(group.at(-1)!.cell).row === row - 1) {
      group.push(finding);
      continue;
    }
    const fresh = [finding];
    groups.push(fresh);
    open.set(key, fresh);
  }
  return groups.map((members) => ({ first: members[0]!, members, cells: members.length === 1 ? members[0]!.cell : `${members[0]!.cell}:${members.at(-1)!.cell}` }));
}
