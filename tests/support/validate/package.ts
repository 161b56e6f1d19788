import { type Element, type Parts, all, children, relationships } from './parts';

const TYPES = '[Content_Types].xml';

function* everything(element: Element): Generator<Element> {
  yield element;
  for (const each of element.children) yield* everything(each);
}

/** Every part typed and reached, every relationship that is used declared. */
export function validatePackage(parts: Parts): void {
  if (!parts.has(TYPES)) return parts.bad(TYPES, 'missing');
  const defaults = new Set(children(parts.tree(TYPES), 'Default').map(({ attributes }) => attributes.Extension?.toLowerCase()));
  const overrides = children(parts.tree(TYPES), 'Override').map(({ attributes }) => attributes.PartName ?? '');
  if (new Set(overrides).size !== overrides.length) parts.bad(TYPES, 'a part has two types');
  for (const name of overrides) if (!parts.has(name.slice(1))) parts.bad(TYPES, `type of a missing part ${name}`);
  const reached = new Set([TYPES, '_rels/.rels']);
  for (const from of ['', ...parts.names]) for (const { part } of parts.links(from)) if (part !== undefined) reached.add(part).add(relationships(part));
  for (const name of parts.names) {
    const extension = name.slice(name.lastIndexOf('.') + 1).toLowerCase();
    if (name !== TYPES && !overrides.includes(`/${name}`) && (!defaults.has(extension) || extension === 'xml')) parts.bad(name, 'has no content type');
    if (!reached.has(name)) parts.bad(name, 'is reached by no relationship');
    if (!name.endsWith('.xml')) continue;
    const known = new Set(parts.links(name).map((link) => link.id));
    for (const { attributes } of everything(parts.tree(name))) {
      for (const [key, value] of Object.entries(attributes)) if (/^r:(id|embed|link|pict)$/.test(key) && !known.has(value)) parts.bad(name, `${key} ${value} has no relationship`);
    }
  }
}

/** Order of a chart's elements, and axes that can be drawn. */
export function validateCharts(parts: Parts, sheetNames: ReadonlySet<string>): void {
  for (const name of parts.names.filter((each) => /^xl\/charts\/chart[^/]*\.xml$/.test(each))) {
    const root = parts.tree(name);
    for (const chart of all(root, 'chart')) {
      const order = chart.children.map((each) => each.name);
      if (order.includes('legend') && order.indexOf('legend') < order.indexOf('plotArea')) parts.bad(name, 'legend before plotArea');
    }
    for (const { text } of all(root, 'f')) {
      const sheet = /^(?:'((?:[^']|'')+)'|([^'!]+))!/.exec(text);
      if (sheet && !sheetNames.has((sheet[1] ?? sheet[2]!).replace(/''/g, "'").toLowerCase())) parts.bad(name, `refers to no sheet: ${text}`);
    }
    for (const scaling of all(root, 'scaling')) {
      const wanted = ['logBase', 'orientation', 'max', 'min'];
      const places = scaling.children.map((each) => wanted.indexOf(each.name)).filter((place) => place >= 0);
      if (places.some((place, index) => index > 0 && place < places[index - 1]!)) parts.bad(name, 'scaling is not in the order logBase, orientation, max, min');
      const value = (key: string): number | undefined => { const found = children(scaling, key)[0]; return found && Number(found.attributes.val); };
      if (value('logBase') !== undefined && (value('min') ?? 1) <= 0) parts.bad(name, 'logarithmic axis with a least value that is not above 0');
    }
  }
}
