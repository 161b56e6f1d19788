import { refuse } from '../errors';
import { type Arity, ANY, type FunctionTable, type WholeFunction, whole } from './definition';

const refused = (arity: Arity, words: string): WholeFunction => whole(arity, () => refuse(words), { volatile: true, takesErrors: true });
const random = (name: string): string => `${name}: random numbers differ at each calculation and cannot be checked, not supported here`;

/** Functions that are known and left out on purpose, with the reason. */
export const refusedFunctions: FunctionTable = {
  RAND: refused([0, 0], random('RAND')),
  RANDBETWEEN: refused([2, 2], random('RANDBETWEEN')),
  RANDARRAY: refused([0, 5], random('RANDARRAY')),
  INFO: refused([1, 1], 'INFO tells about the machine and is not supported here'),
  WEBSERVICE: refused([1, 1], 'WEBSERVICE would fetch from the network and is not supported here'),
  CALL: refused([1, ANY], 'CALL would run foreign code and is not supported here'),
};
