/** A workbook that is not read or not written, and why, in words for the person who chose the file. */
export class WorkbookRefusal extends Error {
  override readonly name = 'WorkbookRefusal';
}

export function refuse(message: string): never {
  throw new WorkbookRefusal(message);
}

/** Text of the file itself as it may stand in a message: short, and on one line. */
export function quoted(text: string): string {
  const plain = text.replace(/[\p{Cc}\p{Cf}\p{Cs}]/gu, '·');
  return `"${plain.length > 60 ? `${plain.slice(0, 57)}…` : plain}"`;
}
