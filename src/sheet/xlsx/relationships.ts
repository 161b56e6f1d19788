import { refuse, quoted } from './refusal';
import { childrenNamed, parseXml } from './xml/tree';

/** A link from one part to another. */
export interface Relationship {
  readonly id: string;
  /** Last step of its type, the same in both dialects of the format: `worksheet`, `table`, `calcChain` … */
  readonly kind: string;
  /** Name of the part it leads to; undefined where it leads out of the file. */
  readonly part: string | undefined;
}

/** Name of the part that holds the relationships of another; of the whole package for ''. */
export function relationshipsPart(part: string): string {
  const cut = part.lastIndexOf('/') + 1;
  return `${part.slice(0, cut)}_rels/${part.slice(cut)}.rels`;
}

export function parseRelationships(text: string, part: string): Relationship[] {
  const seen = new Set<string>();
  return childrenNamed(parseXml(text, relationshipsPart(part)), 'Relationship').map(({ attributes }) => {
    const [id, type, target] = [attributes.get('Id'), attributes.get('Type'), attributes.get('Target')];
    if (id === undefined || type === undefined || target === undefined) refuse(`The file is damaged: ${relationshipsPart(part)} holds a relationship without id, type or target.`);
    if (seen.has(id)) refuse(`The file is damaged: ${relationshipsPart(part)} holds the relationship ${quoted(id)} twice.`);
    seen.add(id);
    return { id, kind: type.slice(type.lastIndexOf('/') + 1), part: attributes.get('TargetMode') === 'External' ? undefined : resolveTarget(part, target) };
  });
}

/** The part a target means: relative to the folder of its source, or from the root when it begins with a stroke. */
export function resolveTarget(source: string, target: string): string {
  const clean = decodePercent(target.replace(/\\/g, '/').replace(/[#?].*$/, ''));
  const steps = clean.startsWith('/') ? [] : source.split('/').slice(0, -1);
  for (const step of clean.split('/')) {
    if (step === '..') {
      if (steps.pop() === undefined) refuse(`The file is damaged: a relationship of ${source || 'the package'} leads out of the file (${quoted(target)}).`);
    } else if (step !== '' && step !== '.') steps.push(step);
  }
  return steps.join('/');
}

function decodePercent(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}
