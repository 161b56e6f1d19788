import { type AstExpression, parse, tokenize } from '@borgar/fx/xlsx';
import { TOKENS } from './shift';

/**
 * Where a formula (with its =) writes a name that LET or LAMBDA declares: offsets of the declarations and of every use in
 * their reach. The same word elsewhere is a defined name.
 */
export function lambdaNamePlaces(formula: string): Set<number> {
  const places = new Set<number>();
  if (!/\b(LET|LAMBDA)\s*\(/i.test(formula)) return places;
  collect(parse(tokenize(formula, { ...TOKENS, withLocation: true })), new Set(), places);
  return places;
}

function collect(node: AstExpression | null, known: ReadonlySet<string>, places: Set<number>): void {
  if (node === null) return;
  const use = (name: string, loc: readonly number[] | undefined): void => { if (known.has(name.toLowerCase())) places.add(loc![0]!); };
  const declare = (names: Set<string>, { name, loc }: { name: string; loc?: readonly number[] }): void => {
    names.add(name.toLowerCase());
    places.add(loc![0]!);
  };
  switch (node.type) {
    case 'ReferenceIdentifier': if (node.kind === 'name') use(node.value, node.loc); return;
    case 'UnaryExpression': case 'BinaryExpression': for (const argument of node.arguments) collect(argument, known, places); return;
    case 'LetExpression': {
      const inside = new Set(known);
      for (const { id, init } of node.declarations) {
        collect(init, inside, places);
        declare(inside, id);
      }
      collect(node.body, inside, places);
      return;
    }
    case 'LambdaExpression': {
      const inside = new Set(known);
      for (const parameter of node.params) declare(inside, parameter);
      collect(node.body, inside, places);
      return;
    }
    case 'CallExpression': {
      const callee: { type: string; name?: string; loc?: readonly number[] } = node.callee;
      if (callee.type === 'Identifier') use(callee.name!, callee.loc);
      else collect(node.callee as unknown as AstExpression, known, places);
      for (const argument of node.arguments) collect(argument, known, places);
    }
  }
}
