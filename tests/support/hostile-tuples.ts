import { call } from '../../src/functions/kernel/call';
import { type Argument, isMatrix } from '../../src/functions/kernel/cell';
import type { Entry } from '../../src/functions/kernel/declaration';
import { catalogue } from '../../src/sheet/catalogue';
import { compile, emptyWorkbook, evaluate } from '../../src/sheet/evaluate';
import { type Random, fairArgument, hostileArgument, pick, spoiledRange } from './hostile';

/** Arguments of the examples of a declaration, as the evaluator hands them over. */
export function exampleArguments({ declaration, member }: Entry): Argument[][] {
  const kinds = Object.values(member.parameters);
  const most = kinds.some(({ shape }) => shape === 'repeating') ? Infinity : kinds.length;
  return declaration.examples.flatMap((formula) => {
    let outermost: Argument[] = [];
    let outerName = '';
    const find = (name: string) => {
      const entry = catalogue.find(name);
      return entry && ((args: readonly Argument[]) => {
        outermost = [...args];
        outerName = entry.member.name;
        return call(catalogue, entry, args).value;
      });
    };
    evaluate(compile(formula.replace(/^=/, '')), { workbook: emptyWorkbook, functions: { find }, sheet: '', row: 0, column: 0 });
    return declaration.members.some(({ name }) => name === outerName) && outermost.length <= most ? [outermost] : [];
  });
}

/** Fair arguments, some of them spoiled now and then; of a question, those of another function behind its name. */
function fairTuple({ member }: Entry, random: Random): Argument[] {
  const kinds = Object.values(member.parameters);
  const spoil = random() < 0.5 ? 0 : 0.2;
  if (kinds[1]?.type === 'raw') {
    const other = pick(random, catalogue.entries);
    return [other.member.name, ...(other.member === member ? [] : fairTuple(other, random))];
  }
  return kinds.map((kind) => (random() < spoil ? hostileArgument(random) : fairArgument(kind, random)));
}

/** An example with one or two arguments changed. */
function changedExample({ member }: Entry, example: readonly Argument[], random: Random): Argument[] {
  const kinds = Object.values(member.parameters);
  const argv = [...example];
  for (let changes = 1 + Math.floor(random() * 2); changes > 0; changes -= 1) {
    const place = Math.floor(random() * Math.max(1, kinds.length, argv.length));
    const there = argv[place];
    const kind = kinds[place];
    if (isMatrix(there) && random() < 0.7) argv[place] = spoiledRange(there, random);
    else argv[place] = random() < 0.5 || kind === undefined ? hostileArgument(random) : fairArgument(kind, random);
  }
  return Array.from(argv);
}

/** One tuple of arguments for a function: anything at all, an example that was changed, or fair ones with some spoiled. */
export function tuple(entry: Entry, examples: readonly Argument[][], random: Random): Argument[] {
  const choice = random();
  if (choice < 0.15) return Array.from({ length: Math.floor(random() * (Object.keys(entry.member.parameters).length + 3)) }, () => hostileArgument(random));
  return choice < 0.6 && examples.length > 0 ? changedExample(entry, pick(random, examples), random) : fairTuple(entry, random);
}
