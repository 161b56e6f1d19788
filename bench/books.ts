import { handMade } from '../tests/support/hand-made-workbook';

/** A row of a schedule: constants in columns A to J, formulas from column K on, each as one of our functions and as the same sum in plain formulas. */
interface Formula {
  readonly ours: string;
  readonly plain: string;
}

const constantsOf = (row: number): readonly number[] => [
  20 + (row % 97), 0.8 + (row % 17) / 100, 400, 5 + (row % 211), 0.15 + (row % 13) / 100, 0.08, 70 + (row % 73), 16 + (row % 225), 1 + (row % 3), 0.1 + (row % 40) / 10,
];

const SUPPLY = '2.1+8.4i';

/** Twelve, each a plain sum that any spreadsheet program has the functions for. `#` stands for the number of the row. */
export const FORMULAS: readonly Formula[] = [
  { ours: 'JW_LOAD_CURRENT(A#,B#,C#)', plain: 'A#*1000/(SQRT(3)*C#*B#)' },
  { ours: 'JW_IMP_PER_METRE(D#,E#,F#)', plain: 'COMPLEX(D#*E#,D#*F#)' },
  { ours: `JW_IMP_SERIES("${SUPPLY}",L#)`, plain: `IMSUM("${SUPPLY}",L#)` },
  { ours: 'JW_FAULT_3PH_MAX(M#,C#)', plain: '1.05*C#/(SQRT(3)*IMABS(M#))' },
  { ours: 'JW_FAULT_2PH_MIN(M#,C#)', plain: '0.95*C#/(2*IMABS(M#))' },
  { ours: 'JW_PEAK_FACTOR(JW_IMP_PART(M#,"R/X"))', plain: '1.02+0.98*EXP(-3*IMREAL(M#)/IMAGINARY(M#))' },
  { ours: 'JW_LETTHROUGH_PROSPECTIVE(N#,J#)', plain: '(1000*N#)^2*J#' },
  { ours: 'JW_CABLE_WITHSTAND(G#,H#,I#)', plain: '(G#*H#*I#)^2' },
  { ours: 'JW_LIMIT_MARGIN(Q#,R#)', plain: '(R#/Q#-1)*100' },
  { ours: 'JW_CABLE_WITHSTAND_CURRENT(G#,H#,J#,I#)', plain: 'G#*H#*I#/SQRT(J#)/1000' },
  { ours: 'JW_VOLT_DROP(K#,B#,L#)', plain: 'SQRT(3)*K#*(IMREAL(L#)*B#+IMAGINARY(L#)*SQRT(1-B#^2))/1000' },
  { ours: 'JW_CABLE_RATING(G#,0.94,0.8,1,1,I#)', plain: 'G#*0.94*0.8*I#' },
];

/** Columns of the formulas, from K on. */
export const COLUMNS = FORMULAS.map((_, at) => String.fromCharCode(75 + at));

export interface BookShape {
  readonly rows: number;
  /** Places in FORMULAS; all of them by default. */
  readonly formulas?: readonly number[];
  /** Columns of constants that these formulas read, as letters; all ten by default. */
  readonly constants?: string;
  readonly plain?: boolean;
}

const escaped = (text: string): string => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');

/** A workbook with one sheet of so many rows. No formula has a stored value, so every program has to compute all of them. */
export function scheduleBook({ rows, formulas = FORMULAS.map((_, at) => at), constants = 'ABCDEFGHIJ', plain = false }: BookShape): Uint8Array {
  const texts = FORMULAS.map(({ ours, plain: native }) => escaped(plain ? native : ours.replaceAll('JW_', '_xldudf_JW_')));
  const lines: string[] = [];
  for (let row = 1; row <= rows; row += 1) {
    const values = constantsOf(row);
    const given = [...constants].map((column) => `<c r="${column}${row}"><v>${values[column.charCodeAt(0) - 65]}</v></c>`);
    const computed = formulas.map((at) => `<c r="${COLUMNS[at]}${row}"><f>${texts[at]!.replaceAll('#', String(row))}</f></c>`);
    lines.push(`<row r="${row}">${given.join('')}${computed.join('')}</row>`);
  }
  return handMade({ sheets: { Schedule: lines.join('') } });
}
