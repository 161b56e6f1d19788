import { boundsWords } from '../../src/functions/kernel/number';

/** Limits as help and refusals write them. */
test.each<[string, Parameters<typeof boundsWords>]>([
  ['above 0', [{ sign: 'above 0' }]],
  ['above 0, up to 3 s', [{ sign: 'above 0', upTo: 3 }, 's']],
  ['above 2, below 5 kA', [{ sign: 'above 0', above: 2, below: 5 }, 'kA']],
  ['0 or more mm', [{ sign: 'atLeast 0' }, 'mm']],
  ['0 to 10 %', [{ sign: 'atLeast 0', upTo: 10 }, '%']],
  ['50 to 1000 V', [{ sign: 'above 0', atLeast: 50, upTo: 1000 }, 'V']],
  ['50 or more, below 1000 V', [{ sign: 'above 0', atLeast: 50, below: 1000 }, 'V']],
  ['any number', [{ sign: 'any' }]],
  ['any number in mm', [{ sign: 'any' }, 'mm']],
  ['up to 5 kA', [{ sign: 'any', upTo: 5 }, 'kA']],
  ['below 5 kA', [{ sign: 'any', below: 5 }, 'kA']],
  ['-25 to 350 °C', [{ sign: 'any', atLeast: -25, upTo: 350 }, '°C']],
  ['one of 1, 3', [{ sign: 'above 0', listed: [1, 3] }]],
  ['above 0, up to 1000000 A²s', [{ sign: 'above 0', upTo: 1e6 }, 'A²s']],
  ['above 0, up to 1e13 A²s', [{ sign: 'above 0', upTo: 1e13 }, 'A²s']],
])('%s', (words, [bounds, unit]) => expect(boundsWords(bounds, unit)).toBe(words));
