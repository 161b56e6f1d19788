import type { Complex } from '../../core/complex';
import type { Judgement } from '../../core/judgement';
import type { Working } from '../../core/working';
import type { Argument } from './cell';
import type { Outcome } from './call';
import type { Kind, Plain } from './kind';

export type Family = 'impedance' | 'fault' | 'network' | 'cable' | 'curve' | 'duty' | 'selectivity' | 'hazard' | 'life' | 'check';

/** Where a function stands: standard with edition, clause; and whether the clause was read or remembered. */
export interface Basis {
  /** "IEC 60364-4-43:2023", or plain words such as "circuit law". */
  source: string;
  clause?: string;
  /** The clause or figures were written down from memory and not yet read in the document. */
  fromMemory?: true;
}

/** A table for a spill: headings, then rows. Empty text where a cell is empty. */
export interface Table {
  headings: readonly string[];
  rows: readonly (readonly (number | string | Complex)[])[];
}

/** What a formula may answer. */
export type Result = number | string | Complex | Judgement | Table;

/**
 * What the cell shows: a unit or one of the words. "as asked" depends on a word argument.
 * Every other text is the unit of a number.
 */
export type ResultKind = 'impedance' | 'verdict' | 'text' | 'table' | 'as asked' | (string & {});

export type Parameters = Readonly<Record<string, Kind<unknown>>>;
export type ArgumentsOf<P extends Parameters> = { [K in keyof P]: P[K] extends Kind<infer T> ? T : never };

/** A caution, or nothing where its condition is not met. */
export type Caution = string | false | undefined;

/** What functions that ask about other functions are handed. */
export interface Questions {
  /** Calls another function with its steps taken down; throws a Refusal where the name is unknown. */
  ask(functionName: string, argv: readonly Argument[]): Outcome;
  /** Every fault of the arguments of a call, in words; empty where all can be read. */
  faults(functionName: string, argv: readonly Argument[]): readonly string[];
  entry(functionName: string): Entry;
  readonly entries: readonly Entry[];
}

/** Reads one argument after another, by their places. */
export type ArgumentRecord = (reader: { read(place: number): unknown }) => Record<string, unknown>;

/** One worksheet name. */
export interface Member {
  readonly name: string;
  readonly summary: string;
  readonly parameters: Parameters;
  /** The parameters in order, for the reader. */
  readonly order: readonly (readonly [string, Kind<unknown>])[];
  /** What each of them takes as it is. */
  readonly plain: readonly Plain[];
  /** Reads the arguments in their order and puts them under their names. */
  readonly record: ArgumentRecord;
  readonly result: ResultKind;
  /** Fills more than one cell. */
  readonly spill: boolean;
  readonly formula: string;
  /** Unit of a result that is "as asked". */
  unit?(args: Record<string, unknown>): string;
  /** Which face of a test this is, if any. */
  readonly face?: 'test' | 'margin';
  compute(args: Record<string, unknown>, work: Working, questions: Questions): Result;
  cautions(args: Record<string, unknown>, result: Result): Caution[];
}

/** What one declaration says: one or more names that stand on one piece of knowledge. */
export interface Declaration {
  readonly family: Family;
  /** Formula in symbols, as the working shows it. */
  readonly formula: string;
  readonly basis: readonly Basis[];
  /** Standing caution, for help and handbook; `cautions` are those of a single call. */
  readonly caution: string;
  /** Words and questions of the trade that lead here. */
  readonly tasks: readonly string[];
  /** Typed formulas, shown and executed in the handbook. */
  readonly examples: readonly string[];
  readonly members: readonly Member[];
}

/** A name with the declaration it belongs to. */
export interface Entry {
  readonly declaration: Declaration;
  readonly member: Member;
}

interface Common {
  summary: string;
  /** Formula in symbols. */
  formula: string;
  basis: readonly Basis[];
  caution?: string;
  /** Short, in the words in which people ask: what search goes by beside summary, formula and arguments. */
  tasks?: readonly string[];
  examples: readonly string[];
}

interface MemberSource<P extends Parameters> {
  name: string;
  /** Where it differs from the declaration's. */
  summary?: string;
  formula?: string;
  parameters: P;
  result: ResultKind;
  spill?: boolean;
  unit?(args: ArgumentsOf<P>): string;
  compute(args: ArgumentsOf<P>, work: Working, questions: Questions): Result;
  cautions?(args: ArgumentsOf<P>, result: Result): Caution[];
}

/** A declaration whose family is set by the file it stands in. */
export type Unfiled = Omit<Declaration, 'family'>;
type UnfiledMember = Omit<Member, 'summary' | 'formula' | 'order' | 'plain' | 'record'> & { readonly ownSummary?: string; readonly ownFormula?: string };

const recordByName = (names: readonly string[]): ArgumentRecord => (reader) => {
  const record: Record<string, unknown> = {};
  for (const [place, name] of names.entries()) record[name] = reader.read(place);
  return record;
};

/** One name of a declaration that has several with different arguments or results. */
export function member<const P extends Parameters>(source: MemberSource<P>): UnfiledMember {
  const { summary, formula, spill = false, cautions = () => [], ...rest } = source;
  const built = { ...rest, spill, cautions, ...(summary === undefined ? {} : { ownSummary: summary }), ...(formula === undefined ? {} : { ownFormula: formula }) };
  return built as unknown as UnfiledMember;
}

/** A declaration with several names. */
export function worksheetFunctions(source: Common & { members: readonly UnfiledMember[] }): Unfiled {
  const { summary, formula, basis, caution = '', tasks = [], examples, members } = source;
  return {
    formula, basis, caution, tasks, examples,
    // Every member has the same keys in the same order: a call then meets one shape of object, which is much faster.
    members: members.map(({ name, ownSummary, parameters, result, spill, ownFormula, unit, face, compute, cautions }) => ({
      name, summary: ownSummary ?? summary, parameters,
      order: Object.entries(parameters), plain: Object.values(parameters).map(({ plain }) => plain), record: recordByName(Object.keys(parameters)),
      result, spill, formula: ownFormula ?? formula, unit, face, compute, cautions,
    })),
  };
}

/** A declaration with one name. */
export const worksheetFunction = <const P extends Parameters>(source: Common & MemberSource<P>): Unfiled =>
  worksheetFunctions({ ...source, members: [member(source)] });

interface TestSource<P extends Parameters> extends Common {
  /** Name without _TEST and _MARGIN. */
  stem: string;
  parameters: P;
  judge(args: ArgumentsOf<P>, work: Working): Judgement;
  cautions?(args: ArgumentsOf<P>, result: Result): Caution[];
}

/** A test with its margin: NAME_TEST gives the verdict, NAME_MARGIN the margin in per cent, from one judgement. */
export function testAndMargin<const P extends Parameters>(source: TestSource<P>): Unfiled {
  const { stem, parameters, judge, cautions, ...common } = source;
  const face = (name: string, result: string, which: 'test' | 'margin'): UnfiledMember => ({
    ...member({ name, parameters, result, compute: judge, ...(cautions ? { cautions } : {}) }),
    face: which,
  });
  return worksheetFunctions({ ...common, members: [face(`${stem}_TEST`, 'verdict', 'test'), face(`${stem}_MARGIN`, '%', 'margin')] });
}

export const family = (name: Family, declarations: readonly Unfiled[]): readonly Declaration[] =>
  declarations.map((declaration) => ({ family: name, ...declaration }));
