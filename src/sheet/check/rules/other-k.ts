import { figure } from '../../../core/figure';
import { clauseOf } from '../../../functions/kernel/explain';
import type { BookCell } from '../../calculate/cells';
import { argumentNode, sampleCell, typedSource } from '../arguments';
import { type Material, Materials, type RowWords } from '../materials';
import { type ObservedCall, argumentOf } from '../observed-call';
import type { Found, Rule, Watch } from '../rule';
import type { Subject } from '../subject';
import { unitNamed } from '../written-unit';
import { once } from './mean-edge';

const K_UNIT = 'A√s/mm²';
const NEAR = 0.5;
/** Headings of conductors that are no line conductors. */
const EARTH = /earth|protective|\bpe\b|\bcpc\b|\becc\b|return|ground|neutral/i;

/** k by words other than those of the row that it stands in. */
export const otherK: Rule = {
  kind: 'other-k', class: 'A',
  looksFor: 'A factor k that belongs to another insulation or metal than the words of its row.',
  watch: (subject) => new KWatch(subject),
};

class KWatch implements Watch {
  private readonly results: Found[] = [];
  private readonly materials: Materials;

  constructor(private readonly subject: Subject) {
    this.materials = new Materials(subject.catalogue);
  }

  call(call: ObservedCall): void {
    if (call.entry.member.name === 'CABLE_K') this.byWords(call);
    else if (call.entry.member.parameters['k']?.unit === K_UNIT) this.byArgument(call);
  }

  found(): Found[] {
    for (const sheet of this.subject.book.sheets) this.byColumns(sheet);
    return once(this.results);
  }

  private wordsAt(cell: BookCell): RowWords {
    return this.materials.wordsOf(this.subject.record(cell));
  }

  /** CABLE_K asked with words that the row contradicts. */
  private byWords(call: ObservedCall): void {
    const row = this.wordsAt(call.cell);
    const asked = { metal: argumentOf(call, 'metal'), insulation: argumentOf(call, 'insulation') };
    const contradicted = (['metal', 'insulation'] as const).filter((what) => row[what].size > 0 && typeof asked[what] === 'string' && !row[what].has(asked[what]));
    if (contradicted.length === 0) return;
    const words = contradicted.map((what) => `${what} ${String(asked[what])}, the row says ${[...row[what]].join(' or ')}`).join('; ');
    this.results.push({ cell: call.cell, reason: `k is asked for ${words}`, clause: clauseOf(call.entry.declaration) });
  }

  /** A figure handed to a function. Where another call gave it, that call is judged by its own words. */
  private byArgument(call: ObservedCall): void {
    const k = argumentOf(call, 'k');
    if (typeof k === 'number' && !this.isOfEarthConductor(call) && !this.isWorkedOut(call)) this.judge(k, this.wordsAt(call.cell), typedSource(this.subject, call, 'k') ?? call.cell);
  }

  /** Figures typed into a column whose unit is that of k, whatever is done with them. */
  private byColumns(sheet: BookCell['sheet']): void {
    for (const { unit, heading, cells } of this.subject.columns(sheet)) {
      if (unitNamed(unit) !== K_UNIT || EARTH.test(heading)) continue;
      for (const cell of cells) if (cell.formula === null && !cell.owner && typeof cell.stored === 'number') this.judge(cell.stored, this.wordsAt(cell), cell);
    }
  }

  /** A figure that is the k of other words than those of the row. One that is nobody's may stand for temperatures of its own. */
  private judge(k: number, row: RowWords, cell: BookCell): void {
    if (row.metal.size === 0 && row.insulation.size === 0) return;
    const fits = ({ metal, insulation }: Material): boolean => (row.metal.size === 0 || row.metal.has(metal)) && (row.insulation.size === 0 || row.insulation.has(insulation));
    const like = this.materials.all().filter((each) => Math.abs(each.k - k) < NEAR);
    if (like.length === 0 || like.some(fits)) return;
    const should = [...new Set(this.materials.all().filter(fits).map((each) => figure(each.k)))];
    const entry = this.subject.catalogue.find('CABLE_K');
    this.results.push({
      cell, clause: entry ? clauseOf(entry.declaration) : '',
      reason: `k ${figure(k)} is that of ${like[0]!.metal} with ${like[0]!.insulation}; the row says ${[...row.metal, ...row.insulation].join(', ')}${should.length === 1 ? `: ${should[0]}` : ''}`,
    });
  }

  private isWorkedOut({ cell, entry }: ObservedCall): boolean {
    return this.subject.ownCalls(cell).some((node) => this.subject.entryOf(node) === entry && this.subject.cellAt(argumentNode(this.subject, node, 'k'), cell)?.cell?.formula != null);
  }

  private isOfEarthConductor({ cell, entry }: ObservedCall): boolean {
    const headingOf = (of: BookCell | undefined): string => (of && this.subject.columnOf(of)?.heading) ?? '';
    return EARTH.test(headingOf(cell)) || this.subject.ownCalls(cell).some((node) => this.subject.entryOf(node) === entry
      && ['k', 'csa_mm2'].some((name) => EARTH.test(headingOf(sampleCell(this.subject, argumentNode(this.subject, node, name), cell)))));
  }
}
