import fc from 'fast-check';
import { type Complex, complex, complexText } from '../../src/core/complex';
import type { Matrix } from '../../src/functions/kernel/cell';
import { between } from './curves';
import type { PlainMesh } from './dense';

const impedance = (least: number, most: number): fc.Arbitrary<Complex> => fc.tuple(between(least, most), between(least, most)).map(([r, x]) => complex(r, x));

/** A connected mesh: a tree with chords across it, parallel branches among them, and one to three sources. */
export const meshes = (most = 12): fc.Arbitrary<PlainMesh> =>
  fc.integer({ min: 2, max: most }).chain((count) => {
    const node = fc.integer({ min: 0, max: count - 1 });
    const tree = fc.tuple(...Array.from({ length: count - 1 }, (_, i) => fc.tuple(fc.constant(i + 1), fc.integer({ min: 0, max: i }), impedance(0.01, 30))));
    const chords = fc.array(fc.tuple(node, node, impedance(0.01, 30)), { maxLength: count }).map((list) => list.filter(([a, b]) => a !== b));
    const sources = fc.array(fc.tuple(node, impedance(0.5, 20)), { minLength: 1, maxLength: 3 });
    return fc.tuple(tree, chords, sources).map(([first, others, feeding]) => ({ count, branches: [...first, ...others], sources: feeding }));
  });

export const nodeName = (node: number): string => `N${node}`;
export const branchTable = ({ branches }: PlainMesh): Matrix => branches.map(([a, b, z]) => [nodeName(a), nodeName(b), complexText(z)]);
export const sourceTable = ({ sources }: PlainMesh): Matrix => sources.map(([a, z]) => [nodeName(a), complexText(z)]);
