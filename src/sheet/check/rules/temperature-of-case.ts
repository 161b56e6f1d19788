import { clauseOf } from '../../../functions/kernel/explain';
import type { Entry } from '../../../functions/kernel/declaration';
import type { BookCell } from '../../calculate/cells';
import { caseComputed } from '../cases';
import type { ObservedCall } from '../observed-call';
import type { Found, Rule, Watch } from '../rule';
import type { Subject } from '../subject';
import { expressions } from '../templates';
import { once } from './mean-edge';

/** Conductors of the greatest fault are cold: IEC 60909-0 takes them at 20 °C. */
const COLD = 20;

type Need = 'cold' | 'hot';

/** An impedance that a call in a cell worked out. */
interface Made {
  readonly cell: BookCell;
  readonly sources: Set<string>;
  readonly state: Set<Need>;
  /** What the results need that are worked out from it. */
  readonly needs: Set<Need>;
}

interface Use {
  readonly cell: BookCell;
  readonly entry: Entry;
  readonly need: Need;
  readonly taken: readonly string[];
}

/** Follows impedances from the run of cable to the fault that they are used for. */
export const temperatureOfCase: Rule = {
  kind: 'temperature-of-case', class: 'A',
  looksFor: 'Conductors at 20 °C in a least fault or a volt drop, or hot ones in a greatest fault, however many cells lie between.',
  watch: (subject) => new ImpedanceTrail(subject),
};

/** Equal runs behind a lookup that are followed: they are alike, and a schedule may hold thousands. */
const MOST_MAKERS = 8;

function* firstOf<T>(values: Iterable<T>, most: number): Generator<T> {
  let count = 0;
  for (const value of values) {
    if (count++ >= most) return;
    yield value;
  }
}

const isText = (value: unknown): value is string => typeof value === 'string' && value !== '';

/** A table of a network may hold hot returns beside cold lines, so its greatest case asks for nothing. */
function needOf(call: ObservedCall): Need | undefined {
  const which = caseComputed(call);
  return which === 'least' ? 'hot' : which === 'greatest' && call.entry.declaration.family === 'fault' ? 'cold' : undefined;
}

/** Impedances travel as text of 17 digits, by which each is found again wherever it was looked up. */
class ImpedanceTrail implements Watch {
  private readonly made = new Map<string, Map<BookCell, Made>>();
  private readonly uses: Use[] = [];

  constructor(private readonly subject: Subject) {}

  call(call: ObservedCall): void {
    const { cell, entry, argv, outcome } = call;
    const taken = argv.flat(2).filter(isText);
    const need = entry.member.name === 'VOLT_DROP' ? 'hot' : needOf(call);
    if (need) this.uses.push({ cell, entry, need, taken });
    if (entry.member.result !== 'impedance' || !isText(outcome.value)) return;
    const temperature = outcome.args?.['temperature_C'];
    const made = this.madeIn(cell, outcome.value);
    if (typeof temperature === 'number') made.state.add(temperature > COLD ? 'hot' : 'cold');
    for (const each of taken) if (each !== outcome.value) made.sources.add(each);
  }

  found(): Found[] {
    for (const { taken, need, cell } of this.uses) this.spread(cell, taken, need);
    return once(this.uses.flatMap((use) => [...this.mistakes(use)]));
  }

  private madeIn(cell: BookCell, text: string): Made {
    let all = this.made.get(text);
    if (!all) this.made.set(text, (all = new Map()));
    let made = all.get(cell);
    if (!made) all.set(cell, (made = { cell, sources: new Set(), state: new Set(), needs: new Set() }));
    return made;
  }

  /** Where an impedance that a cell takes was made: in itself, in a cell that it names, or, looked up, in any that holds it. */
  private makers(taker: BookCell, text: string): readonly Made[] {
    const all = this.made.get(text);
    if (!all) return [];
    const own = all.get(taker);
    if (own) return [own];
    if (all.size > 1) {
      const named = [...expressions(this.subject.templates.of(taker)?.tree)].flatMap((node) => {
        const made = node.type === 'ReferenceIdentifier' ? this.subject.cellAt(node, taker)?.cell : undefined;
        return (made && all.get(made)) ?? [];
      });
      if (named.length > 0) return named;
    }
    return [...firstOf(all.values(), MOST_MAKERS)];
  }

  /** Tells impedances, and all that they were made of, what they are used for. */
  private spread(taker: BookCell, taken: readonly string[], need: Need): void {
    const open = taken.flatMap((text) => this.makers(taker, text));
    while (open.length > 0) {
      const made = open.pop()!;
      if (made.needs.has(need)) continue;
      made.needs.add(need);
      for (const text of made.sources) open.push(...this.makers(made.cell, text));
    }
  }

  /**
   * Where an impedance of the wrong temperature came into a result: in the run itself where nothing else uses it, else in the cell
   * that took it for the wrong case.
   */
  private *mistakes({ cell, entry, need, taken }: Use): Generator<Found> {
    const clause = clauseOf(entry.declaration);
    const wrong: Need = need === 'hot' ? 'cold' : 'hot';
    const which = entry.member.name === 'VOLT_DROP' ? 'a volt drop' : need === 'hot' ? 'a least fault' : 'a greatest fault';
    const words = wrong === 'cold' ? `conductors at 20 °C or below in ${which}, which takes them hot` : `hot conductors in ${which}, which takes them at 20 °C`;
    const seen = new Set<Made>();
    const open = taken.flatMap((text) => this.makers(cell, text)).map((made) => ({ made, taker: cell }));
    while (open.length > 0) {
      const { made, taker } = open.pop()!;
      if (seen.has(made)) continue;
      seen.add(made);
      const at = made.needs.size > 1 ? taker : made.cell;
      if (made.state.has(wrong) && !made.state.has(need)) yield { cell: at, reason: `${words}${at === cell ? '' : ` (${cell.sheet.name}!${cell.address})`}`, clause };
      else for (const text of made.sources) for (const source of this.makers(made.cell, text)) open.push({ made: source, taker: at });
    }
  }
}
