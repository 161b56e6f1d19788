import { families } from '../functions';
import { records } from '../functions/generated/records';
import { catalogueOf } from '../functions/kernel/catalogue';

/** All worksheet functions, as every host sees them. */
export const catalogue = catalogueOf(families, records);
