import type { Catalogue } from '../../functions/kernel/catalogue';
import { call, plainHost } from '../../functions/kernel/call';
import type { WordList } from '../../functions/kernel/kind';
import type { BookCell } from '../calculate/cells';

/** Sizes on either side of the step at 300 mm² where the limit of PVC falls. */
const SIZES = [300, 400];

export interface Material {
  readonly metal: string;
  readonly insulation: string;
  /** Adiabatic factor of a line conductor, A√s/mm². */
  readonly k: number;
}

/** Words for metal and insulation that stand in a row; none where it says nothing. */
export interface RowWords {
  readonly metal: ReadonlySet<string>;
  readonly insulation: ReadonlySet<string>;
}

/** The words of CABLE_K as they stand in rows of schedules, and the factor k of each pair. */
export class Materials {
  private readonly metals: ReadonlyMap<string, string>;
  private readonly insulations: ReadonlyMap<string, string>;
  private table: readonly Material[] | undefined;

  constructor(private readonly catalogue: Catalogue) {
    const parameters = catalogue.find('CABLE_K')?.member.parameters;
    this.metals = spellings(parameters?.['metal']?.words ?? {});
    this.insulations = spellings(parameters?.['insulation']?.words ?? {});
  }

  wordsOf(record: readonly BookCell[]): RowWords {
    const words = { metal: new Set<string>(), insulation: new Set<string>() };
    for (const { stored } of record) {
      if (typeof stored !== 'string') continue;
      const folded = stored.trim().toLowerCase();
      const metal = this.metals.get(folded);
      const insulation = this.insulations.get(folded);
      if (metal) words.metal.add(metal);
      if (insulation) words.insulation.add(insulation);
    }
    return words;
  }

  /** k of every pair of words, as CABLE_K gives it. */
  all(): readonly Material[] {
    return (this.table ??= this.computed());
  }

  private computed(): Material[] {
    const entry = this.catalogue.find('CABLE_K');
    if (!entry) return [];
    const pairs = [...new Set(this.metals.values())].flatMap((metal) => [...new Set(this.insulations.values())].flatMap((insulation) => SIZES.map((size) => ({ metal, insulation, size }))));
    return pairs.flatMap(({ metal, insulation, size }) => {
      const k = call(this.catalogue, entry, [metal, insulation, size], plainHost).value;
      return typeof k === 'number' ? [{ metal, insulation, k }] : [];
    });
  }
}

const spellings = (words: WordList): Map<string, string> =>
  new Map(Object.entries(words).flatMap(([word, others]) => [word, ...others].map((each) => [each.toLowerCase(), word] as const)));
