import { call, plainHost } from '../../../functions/kernel/call';
import { figure } from '../../../core/figure';
import type { WordList } from '../../../functions/kernel/kind';
import { clauseOf } from '../../../functions/kernel/explain';
import type { BookCell } from '../../calculate/cells';
import { argumentNode, sampleCell, typedSource } from '../arguments';
import { type ObservedCall, argumentOf } from '../observed-call';
import type { Found, Rule, Watch } from '../rule';
import type { Subject } from '../subject';
import { once } from './mean-edge';

/** Sizes on either side of the step at 300 mm² where the limit of PVC falls. */
const SIZES = [300, 400];
const NEAR = 0.5;
/** Headings of conductors that are no line conductors. */
const EARTH = /earth|protective|\bpe\b|\bcpc\b|\becc\b|return|ground|neutral/i;

interface Material { readonly metal: string; readonly insulation: string }

/** k by words other than those of the row that it stands in. */
export const otherK: Rule = {
  kind: 'other-k', class: 'A',
  looksFor: 'A factor k that belongs to another insulation or metal than the words of its row.',
  watch: (subject) => new KWatch(subject),
};

class KWatch implements Watch {
  private readonly results: Found[] = [];
  private readonly metals: ReadonlyMap<string, string>;
  private readonly insulations: ReadonlyMap<string, string>;
  private table: { material: Material; k: number }[] | undefined;

  constructor(private readonly subject: Subject) {
    const parameters = this.subject.catalogue.find('CABLE_K')?.member.parameters;
    this.metals = spellings(parameters?.['metal']?.words ?? {});
    this.insulations = spellings(parameters?.['insulation']?.words ?? {});
  }

  call(call: ObservedCall): void {
    if (call.entry.member.name === 'CABLE_K') this.byWords(call);
    else if (call.entry.member.parameters['k']?.unit === 'A√s/mm²') this.byFigure(call);
  }

  found(): Found[] {
    return once(this.results);
  }

  /** CABLE_K asked with words that the row contradicts. */
  private byWords(call: ObservedCall): void {
    const row = this.rowWords(call.cell);
    const asked = { metal: argumentOf(call, 'metal'), insulation: argumentOf(call, 'insulation') };
    const contradicted = (['metal', 'insulation'] as const).filter((what) => row[what].size > 0 && typeof asked[what] === 'string' && !row[what].has(asked[what]));
    if (contradicted.length === 0) return;
    const words = contradicted.map((what) => `${what} ${String(asked[what])}, the row says ${[...row[what]].join(' or ')}`).join('; ');
    this.results.push({ cell: call.cell, reason: `k is asked for ${words}`, clause: clauseOf(call.entry.declaration) });
  }

  /** A figure that is the k of other words than those of the row. */
  private byFigure(call: ObservedCall): void {
    const k = argumentOf(call, 'k');
    if (typeof k !== 'number') return;
    const row = this.rowWords(call.cell);
    if (row.metal.size === 0 && row.insulation.size === 0) return;
    if (this.isOfEarthConductor(call)) return;
    const known = this.known().filter((each) => Math.abs(each.k - k) < NEAR);
    const fits = ({ metal, insulation }: Material): boolean => (row.metal.size === 0 || row.metal.has(metal)) && (row.insulation.size === 0 || row.insulation.has(insulation));
    if (known.length === 0 || known.some(({ material }) => fits(material))) return;
    const source = typedSource(this.subject, call, 'k');
    const worked = this.workedSource(call);
    if (worked) return; // the call that gave it is judged by its own words
    const { metal, insulation } = known[0]!.material;
    const should = [...new Set(this.known().filter(({ material }) => fits(material)).map((each) => figure(each.k)))];
    this.results.push({
      cell: source ?? call.cell, clause: clauseOf((this.subject.catalogue.find('CABLE_K') ?? call.entry).declaration),
      reason: `k ${figure(k)} is that of ${metal} with ${insulation}; the row says ${[...row.metal, ...row.insulation].join(', ')}${should.length === 1 ? `: ${should[0]}` : ''}`,
    });
  }

  /** The cell with a formula that k was read from. */
  private workedSource({ cell, entry }: ObservedCall): BookCell | undefined {
    for (const node of this.subject.ownCalls(cell)) {
      if (this.subject.entryOf(node) !== entry) continue;
      const source = this.subject.cellAt(argumentNode(this.subject, node, 'k'), cell)?.cell;
      if (source?.formula != null) return source;
    }
    return undefined;
  }

  private isOfEarthConductor({ cell, entry }: ObservedCall): boolean {
    return this.subject.ownCalls(cell).some((node) => {
      if (this.subject.entryOf(node) !== entry) return false;
      return ['k', 'csa_mm2'].some((name) => {
        const source = sampleCell(this.subject, argumentNode(this.subject, node, name), cell);
        return source !== undefined && EARTH.test(this.subject.columnOf(source)?.heading ?? '');
      });
    }) || EARTH.test(this.subject.columnOf(cell)?.heading ?? '');
  }

  private rowWords(cell: BookCell): { metal: Set<string>; insulation: Set<string> } {
    const words = { metal: new Set<string>(), insulation: new Set<string>() };
    for (const { stored: text } of this.subject.record(cell)) {
      if (typeof text !== 'string') continue;
      const folded = text.trim().toLowerCase();
      const metal = this.metals.get(folded);
      const insulation = this.insulations.get(folded);
      if (metal) words.metal.add(metal);
      if (insulation) words.insulation.add(insulation);
    }
    return words;
  }

  /** k of every pair of words, as CABLE_K gives it. */
  private known(): { material: Material; k: number }[] {
    if (this.table) return this.table;
    const entry = this.subject.catalogue.find('CABLE_K');
    this.table = [];
    if (!entry) return this.table;
    for (const metal of new Set(this.metals.values())) {
      for (const insulation of new Set(this.insulations.values())) {
        for (const size of SIZES) {
          const k = call(this.subject.catalogue, entry, [metal, insulation, size], plainHost).value;
          if (typeof k === 'number') this.table.push({ material: { metal, insulation }, k });
        }
      }
    }
    return this.table;
  }
}

const spellings = (words: WordList): Map<string, string> =>
  new Map(Object.entries(words).flatMap(([word, others]) => [word, ...others].map((each) => [each.toLowerCase(), word] as const)));
