import type { Cell } from '../functions/kernel/cell';
import { rounded } from '../core/figure';
import { unitOf } from '../core/units';
import { type Book, openBook } from '../sheet/book';
import { customFunctions } from '../sheet/custom-functions';
import { addressOf } from '../sheet/xlsx/address';
import type { TableFacts } from '../sheet/xlsx/tables';
import { cellLine } from './cell-text';
import { readInput } from './files';
import { optionsOf } from './options';
import { named } from './recompute';
import { CouldNotRun, DONE, type Terminal, columns, oneLine } from './terminal';

/** Prints a table of a workbook as it is stored, figures to 4 digits. */
export async function tableCommand(args: readonly string[], terminal: Terminal): Promise<number> {
  const { positionals } = optionsOf(args, {});
  const [file, name, ...wanted] = positionals;
  if (file === undefined) throw new CouldNotRun('no workbook: joulewright table FILE.xlsx [TABLE [COLUMN …]]');
  const bytes = await readInput(file);
  const book = named(file, () => openBook(bytes, customFunctions));
  const { tables } = book.workbook.facts;
  if (name === undefined) {
    if (tables.length === 0) terminal.out('The workbook holds no table.');
    for (const table of tables) terminal.out(`${oneLine(table.name)} (sheet ${oneLine(table.sheet)}): ${table.columns.map((column) => oneLine(column.name)).join(', ')}`);
    return DONE;
  }
  const table = tables.find((one) => one.name.toLowerCase() === name.toLowerCase());
  if (!table) throw new CouldNotRun(`${file}: has no table ${oneLine(name)}; its tables: ${tables.map((one) => one.name).join(', ') || 'none'}`);
  for (const line of tableLines(book, table, wanted)) terminal.out(line);
  return DONE;
}

function tableLines(book: Book, table: TableFacts, wanted: readonly string[]): string[] {
  const all = table.columns.map((column) => column.name);
  const chosen = wanted.length === 0 ? all : wanted;
  const places = chosen.map((column) => {
    const place = all.findIndex((name) => name.toLowerCase() === column.toLowerCase());
    if (place < 0) throw new CouldNotRun(`table ${table.name} has no column ${oneLine(column)}; its columns: ${all.join(', ')}`);
    return place;
  });
  const rows: Cell[][] = [];
  for (let row = table.box.top + table.headerRows; row <= table.box.bottom - table.totalsRows; row += 1) {
    rows.push(places.map((place) => book.value(table.sheet, addressOf(row, table.box.left + place))));
  }
  const numeric = places.map((_, i) => rows.some((row) => typeof row[i] === 'number') && rows.every((row) => typeof row[i] === 'number' || row[i] === null));
  const text = rows.map((row) => row.map((cell) => (typeof cell === 'number' ? rounded(cell) : cellLine(cell))));
  const heading = places.map((place) => oneLine(all[place]!));
  const units = unitsAbove(book, table, places);
  const [head, ...body] = columns([heading, ...(units ? [units] : []), ...text], numeric);
  const rule = '─'.repeat([...head!].length);
  return units ? [head!, body[0]!, rule, ...body.slice(1)] : [head!, rule, ...body];
}

/** The units that stand above the heading of a table, where the row there holds units and nothing else. */
function unitsAbove(book: Book, table: TableFacts, places: readonly number[]): string[] | undefined {
  const row = table.box.top - 1;
  if (row < 0) return undefined;
  const texts = places.map((place) => book.value(table.sheet, addressOf(row, table.box.left + place)));
  const isUnit = (cell: Cell): boolean => cell === null || (typeof cell === 'string' && (cell === '–' || cell === '' || unitOf(cell.replace(/ peak$/, '')) !== undefined));
  return texts.every(isUnit) && texts.some((cell) => typeof cell === 'string') ? texts.map((cell) => (cell === null ? '' : String(cell))) : undefined;
}
