import MiniSearch from 'minisearch';
import type { Entry } from '../../functions/kernel/declaration';
import { clauseOf } from '../../functions/kernel/explain';
import type { Catalogue } from '../../functions/kernel/catalogue';
import { FAMILY_TITLES } from '../family-titles';
import { keptForm, wordsOf } from './words';

/** Fields that are searched, by how much a hit in them counts. All of them come from the declarations. */
const WEIGHTS = { name: 4, tasks: 4, summary: 2.5, family: 1, formula: 1, arguments: 1, source: 0.7, caution: 0.5 } as const;
type Field = keyof typeof WEIGHTS;

const textOf = ({ declaration, member }: Entry): Record<Field, string> => ({
  name: member.name.replace(/_/g, ' '),
  tasks: declaration.tasks.join('; '),
  summary: member.summary,
  family: FAMILY_TITLES[declaration.family],
  formula: member.formula,
  arguments: member.order.map(([name, kind]) => `${name.replace(/_/g, ' ')} ${kind.about} ${Object.keys(kind.words ?? {}).join(' ')}`).join('; '),
  source: clauseOf(declaration),
  caution: declaration.caution,
});

/** Finds functions by trade words and questions. */
export class FunctionFinder {
  private readonly index: MiniSearch;
  private readonly entries: readonly Entry[];

  constructor({ entries }: Catalogue) {
    this.entries = entries;
    this.index = new MiniSearch({
      fields: Object.keys(WEIGHTS),
      tokenize: wordsOf,
      processTerm: keptForm,
      searchOptions: {
        boost: { ...WEIGHTS },
        // A word of one or two letters means itself; longer ones may go on, and be typed with a slip.
        prefix: (word) => word.length > 2,
        fuzzy: (word) => (word.length > 4 ? 0.2 : false),
        weights: { prefix: 0.6, fuzzy: 0.3 },
      },
    });
    this.index.addAll(entries.map((entry, id) => ({ id, ...textOf(entry) })));
  }

  /** Functions for a question, the best first: those that all its words speak of, else those that some do. */
  find(question: string): Entry[] {
    const exact = this.entries.filter(({ member }) => member.name === question.trim().toUpperCase().replace(/^=?(?:JW\.)?/, ''));
    const search = (combineWith: 'AND' | 'OR') => this.index.search(question, { combineWith });
    const all = search('AND');
    const found = (all.length > 0 ? all : search('OR')).map(({ id }) => this.entries[id as number]!);
    return [...new Set([...exact, ...found])];
  }
}
