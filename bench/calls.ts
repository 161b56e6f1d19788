import { median } from './figures';

/** One step of a loop; what it gives is added up, so that no compiler leaves the work out. */
export type Work = (round: number) => number;

let kept = 0;

/** Processor time of one round, s: what other processes take of the machine is not in it. */
function once(work: Work, rounds: number): number {
  const start = process.cpuUsage();
  let sum = 0;
  for (let round = 0; round < rounds; round += 1) sum += work(round);
  const { user, system } = process.cpuUsage(start);
  kept += sum;
  return (user + system) / 1e6 / rounds;
}

export interface Measured<Name extends string> {
  /** Median time of one round, s. */
  readonly seconds: Readonly<Record<Name, number>>;
  /** Median over the repeats of the ratio of two works that ran next to each other. */
  ratio(of: Name, to: Name): number;
}

/** Runs all works in turn, again and again, so that each repeat holds them against one another under the same conditions. */
export function measure<Name extends string>(works: Readonly<Record<Name, Work>>, repeats: number, rounds = 200_000): Measured<Name> {
  const names = Object.keys(works) as Name[];
  for (const name of names) for (let warm = 0; warm < 3; warm += 1) once(works[name], rounds);
  const runs = Array.from({ length: repeats }, () => Object.fromEntries(names.map((name) => [name, once(works[name], rounds)])) as Record<Name, number>);
  if (Number.isNaN(kept)) throw new Error('a work that is measured gave no number');
  return {
    seconds: Object.fromEntries(names.map((name) => [name, median(runs.map((run) => run[name]))])) as Record<Name, number>,
    ratio: (of, to) => median(runs.map((run) => run[of] / run[to])),
  };
}
