/** How the cells of a pasted line are parted. */
export type Separator = 'tab' | 'semicolon' | 'comma' | 'space';

export const SEPARATOR_WORDS: Readonly<Record<Separator, string>> = { tab: 'tabs', semicolon: 'semicolons', comma: 'commas', space: 'spaces' };

const NUMBER = /^[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?$/;
const DECIMAL_COMMA = /^[+-]?\d+,\d+$/;
export const isNumber = (text: string): boolean => NUMBER.test(text);
/** 1,5 and 1,500: a decimal comma or a thousands mark, nobody knows which. */
export const hasNumberComma = (text: string): boolean => /^[+-]?\d+(?:,\d+)+(?:\.\d+)?(?:\s.*)?$/.test(text);

/** Spaces of all kinds become one; the minus of typography becomes the plain one. */
export const plainLine = (line: string): string => line.replace(/[\u00a0\u202f\u2009]/g, ' ').replace(/\u2212/g, '-');

/** What parts the cells of a whole paste: the strongest sign that any line has. */
export function separatorOf(lines: readonly string[]): Separator {
  if (lines.some((line) => line.includes('\t'))) return 'tab';
  if (lines.some((line) => line.includes(';'))) return 'semicolon';
  const withComma = lines.filter((line) => line.includes(','));
  if (withComma.length === 0) return 'space';
  // "1,5 20" is two figures with decimal commas, not three cells.
  const figures = withComma.filter((line) => /\d/.test(line));
  const spaced = figures.filter((line) => { const cells = line.trim().split(/\s+/); return cells.length > 1 && cells.every((cell) => isNumber(cell) || DECIMAL_COMMA.test(cell)); });
  if (figures.length > 0 && spaced.length === figures.length) return 'space';
  // Only a heading may hold a comma: "current, A".
  return figures.length === 0 ? 'space' : 'comma';
}

/** The cells of one line. Between spaces a unit belongs to the figure before it: "1.2 kA 5 s". */
export function cellsOf(line: string, separator: Separator): string[] {
  if (separator === 'tab') return two(trimmed(line.split('\t')));
  if (separator === 'semicolon') return two(trimmed(line.split(';')));
  if (separator === 'comma') return trimmed(line.split(','));
  const words = line.trim().split(/\s+/).filter((word) => word !== '');
  if (!words.some((word) => /^[+-]?[.\d]/.test(word))) return headingCells(line);
  return words.reduce<string[]>((cells, word) => {
    const last = cells.length - 1;
    if (last >= 0 && isNumber(cells[last]!) && /^[^\d.+-]/.test(word)) cells[last] += ` ${word}`;
    else cells.push(word);
    return cells;
  }, []);
}

/** Headings between spaces: units in brackets close a heading, or wide gaps part them, or single words do. */
function headingCells(line: string): string[] {
  const wide = trimmed(line.trim().split(/\s{2,}/));
  if (wide.length === 2) return wide;
  const closed = line.match(/[^()[\]]*[([][^)\]]*[)\]]/g);
  return closed && closed.length === 2 ? trimmed(closed) : line.trim().split(/\s+/);
}

const trimmed = (cells: readonly string[]): string[] => cells.map((cell) => cell.trim().replace(/^"(.*)"$/, '$1').trim());

/** Without blank cells behind the second: a column too many came along. */
const two = (cells: string[]): string[] => {
  while (cells.length > 2 && cells.at(-1) === '') cells.pop();
  return cells;
};
