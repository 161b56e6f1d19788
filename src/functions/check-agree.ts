import { type SheetCell, compareCells, compared, differencePct } from '../core/check/agree';
import { hint } from '../core/check/hint';
import { missing, outOfRange, wrongValue } from '../core/refusal';
import { type Cell, CellError } from './kernel/cell';
import { member, worksheetFunction, worksheetFunctions } from './kernel/declaration';
import { settledReading } from './kernel/kind';
import { anyCell, flag, plainNumber, quantity } from './kernel/kinds';
import { column } from './kernel/range-kinds';
import { isBlankCell, shownCell } from './kernel/scalar';

/** Comparisons of a designer's figures with a checker's. */

const tolerance = () => quantity('%', 'difference allowed, per cent of the checker’s figure', { sign: 'atLeast 0', upTo: 100 });
const floor = () => plainNumber('difference allowed in the figures’ own unit', { sign: 'atLeast 0', default: 0 });

/** A cell as a comparison takes it: whatever reads as blank is blank. */
export const given = (cell: Cell | undefined): SheetCell => (isBlankCell(cell) ? null : cell!);

/** What a comparison needs in a cell that must hold a quantity. */
function quantityIn(cell: Cell, name: string) {
  const value = compared(cell as Exclude<Cell, null | CellError>);
  if (value.kind === 'words') throw wrongValue(name, `got ${shownCell(cell)}, takes a number or an impedance`);
  return value;
}

export const agree = worksheetFunctions({
  summary: 'Does the designer’s figure agree with the checker’s?',
  tasks: ['compare with the designer’s figure', 'check a calculation', 'does it match'],
  formula: '100·(designer/checker − 1)',
  basis: [{ source: 'own rule' }],
  caution: 'A small per cent on the wrong side still counts; a large one on the safe side is still a finding.',
  examples: ['=JW.AGREE(31.2,31.5,2)', '=JW.AGREE(44.5,31.5,2)', '=JW.AGREE_DIFFERENCE(44.5,31.5)'],
  members: [
    member({
      name: 'AGREE',
      parameters: {
        designer: anyCell('the designer’s figure', { datum: true, errors: true }),
        checker: anyCell('the checker’s figure', { datum: true, errors: true }),
        tolerance_pct: tolerance(),
        floor: floor(),
      },
      result: 'text',
      compute: ({ designer, checker, tolerance_pct, floor }, work) => compareCells(given(designer), given(checker), tolerance_pct, floor, work).finding,
    }),
    member({
      name: 'AGREE_DIFFERENCE',
      summary: 'Difference of the designer’s figure from the checker’s, per cent.',
      parameters: { designer: anyCell('the designer’s figure', {}), checker: anyCell('the checker’s figure', {}) },
      result: '%',
      compute: ({ designer, checker }, work) => {
        const difference = differencePct(quantityIn(designer, 'designer'), quantityIn(checker, 'checker'), work);
        if (difference === undefined) throw outOfRange('checker', 'is zero, or nearly: no per cent of it can be stated');
        return difference;
      },
    }),
  ],
});

/** Tolerance of one row, per cent: the one for all, or the row's own. */
function toleranceAt(tolerances: readonly Cell[], row: number): number {
  const one = tolerances.length === 1;
  const cell = tolerances[one ? 0 : row] ?? null;
  const name = one ? 'tolerance_pct' : `tolerance_pct row ${row + 1}`;
  if (isBlankCell(cell)) throw missing(name);
  return tolerance().read(cell, name, settledReading);
}

/** A cell as a list shows it. */
const listed = (cell: Cell): number | string => (typeof cell === 'number' || typeof cell === 'string' ? cell : cell === null ? '' : shownCell(cell));

export const agreeList = worksheetFunction({
  name: 'AGREE_LIST',
  summary: 'Lists only the rows where designer and checker disagree.',
  tasks: ['list of disagreements', 'compare two schedules', 'check a whole column'],
  formula: '100·(designer/checker − 1)',
  parameters: {
    designer: column('the designer’s figures', {}),
    checker: column('the checker’s figures, as many', {}),
    tolerance_pct: column('difference allowed, per cent of the checker’s figure: one cell, or one a row', {}),
    floor: floor(),
    headers: flag('headings above the list', { default: true }),
  },
  result: 'table',
  spill: true,
  basis: [{ source: 'own rule' }],
  caution: 'A small per cent on the wrong side still counts; a large one on the safe side is still a finding.',
  examples: ['=JW.AGREE_LIST({31.2;44.5;0.4},{31.5;31.5;0.4},2)', '=JW.AGREE_LIST({5;6},{5;6},1)'],
  compute: ({ designer, checker, tolerance_pct, floor }) => {
    const height = designer.length;
    if (checker.length !== height) throw wrongValue('checker', `got ${checker.length} rows, takes ${height} as the designer has`);
    if (tolerance_pct.length !== 1 && tolerance_pct.length !== height) throw wrongValue('tolerance_pct', `got ${tolerance_pct.length} rows, takes 1 or ${height}`);
    const rows = designer.flatMap((cell, row) => {
      const [d, c] = [given(cell), given(checker[row])];
      if (d === null && c === null) return [];
      const { finding, differencePct: difference } = compareCells(d, c, toleranceAt(tolerance_pct, row), floor);
      return finding === 'agrees' ? [] : [[row + 1, listed(cell), listed(checker[row]!), difference ?? '', finding]];
    });
    return { headings: ['row', 'designer', 'checker', 'difference %', 'finding'], rows: rows.length ? rows : [['', '', '', '', 'no differences']] };
  },
});

export const agreeHint = worksheetFunction({
  name: 'AGREE_HINT',
  summary: 'Guesses why two figures differ, from their ratio: r.m.s. against peak, line against phase, thousand, c, temperature, k.',
  tasks: ['why do the figures differ', 'find the mistake', 'factor of 1.73, 1.41, 1000'],
  formula: 'larger/smaller',
  parameters: {
    designer: anyCell('the designer’s figure', {}),
    checker: anyCell('the checker’s figure', {}),
    within_pct: quantity('%', 'how near to a known ratio', { upTo: 5, default: 0.5 }),
  },
  result: 'text',
  basis: [{ source: 'own rule' }],
  caution: 'A guess, to look there first.',
  examples: ['=JW.AGREE_HINT(44.55,31.5)', '=JW.AGREE_HINT(31.5,54.6)', '=JW.AGREE_HINT(31.5,37)'],
  compute: ({ designer, checker, within_pct }) => {
    type Present = Exclude<Cell, null | CellError>;
    return hint(compared(designer as Present), compared(checker as Present), within_pct);
  },
});
