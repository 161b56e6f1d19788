/** npx tsx scripts/icons/write.ts: draws the icons of the ribbon and the add-in list. */
import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { ICON_SIZES, mark } from './mark';
import { png } from './png';

const folder = path.resolve(import.meta.dirname, '../../src/excel/static/assets');
mkdirSync(folder, { recursive: true });
for (const size of ICON_SIZES) writeFileSync(path.join(folder, `icon-${size}.png`), png(mark(size)));
console.log(`wrote ${ICON_SIZES.length} icons`);
