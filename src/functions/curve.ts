import { fuseGateCurrent, fuseJouleLimit } from '../core/curve/fuse-band';
import { fuseRatings } from '../core/standards/fuse-gates';
import { family, member, worksheetFunctions } from './kernel/declaration';
import { quantity, word } from './kernel/kinds';

const bandNotCurve = 'limit band of the standard, not the curve of a link';
const fuseRating = () => quantity('A', 'rated current of the gG link', { listed: fuseRatings });

export const bandFuse = worksheetFunctions({
  summary: 'Limit band of the standard for a gG link: gate current, or pre-arcing joule integral at 0.01 s.',
  formula: 'table of the standard',
  basis: [{ source: 'IEC 60269-1:2006+A2', clause: 'tables 3 and 7', fromMemory: true }],
  caution: 'A band, not the curve of a link.',
  examples: ['=JW.BAND_FUSE(100,"5 s greatest")', '=JW.BAND_FUSE(200,"0.1 s least")', '=JW.BAND_FUSE_JOULE(63,"greatest")', '=JW.BAND_FUSE_JOULE(100,"least")'],
  members: [
    member({
      name: 'BAND_FUSE',
      summary: 'Gate current of a gG link by the standard. Worst edge: to trip in 5 s or 0.1 s the greatest, to hold the least.',
      parameters: {
        rated_A: fuseRating(),
        gate: word('gate of the standard', { '10 s least': ['imin 10 s'], '5 s greatest': ['imax 5 s'], '0.1 s least': ['imin 0.1 s'], '0.1 s greatest': ['imax 0.1 s'] }, {}),
      },
      result: 'A',
      compute: ({ rated_A, gate }, work) => fuseGateCurrent(rated_A, gate, work),
      cautions: () => [bandNotCurve],
    }),
    member({
      name: 'BAND_FUSE_JOULE',
      summary: 'Limit of the pre-arcing joule integral of a gG link at 0.01 s by the standard.',
      parameters: { rated_A: fuseRating(), limit: word('which limit', { least: ['min'], greatest: ['max'] }, {}) },
      result: 'A²s',
      compute: ({ rated_A, limit }, work) => fuseJouleLimit(rated_A, limit, work),
      cautions: () => [bandNotCurve],
    }),
  ],
});

export const curve = family('curve', [bandFuse]);
