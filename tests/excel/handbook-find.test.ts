import { holds, searchable, termsOf } from '../../src/sheet/handbook/search/find';

const finds = (query: string, text: string): boolean => holds(searchable(text), termsOf(query));

test.each([
  ['cab', 'CABLE_K'], ['cable_k', 'CABLE_K'], ['JW.CABLE_K', 'CABLE_K'], ['=jw.cable', 'CABLE_K'], ['k', 'CABLE_K'],
  ['a2s', 'let-through in A²s'], ['I^2t', 'the I²t of it'], ['mm2', 'cross-section, mm²'], ['let-through', 'Let-through'], ['maker’s', "the maker's data"],
  ['60364-4-43', 'IEC 60364-4-43:2023'], ['434.5.2', 'clause 434.5.2'], ['loop earth', 'earth fault by the loop'],
  ['grounding', 'earthed or earthing'], ['cables', 'a cable'], ['groundi', 'grounding'],
  ['  ', 'anything'], ['JW.', 'anything'], ['“—”', 'anything'], ['what is the fuse', 'fuse'],
])('%s finds it in: %s', (query, text) => expect(finds(query, text)).toBe(true));

test.each([
  ['able', 'CABLE_K'], ['cable_w', 'CABLE_K'], ['loop motor', 'earth fault by the loop'], ['60364-4-41', 'IEC 60364-4-43:2023'], ['zebra', ''], ['k cable', 'K of the conductor'],
])('%s does not find it in: %s', (query, text) => expect(finds(query, text)).toBe(false));
