/** Names of boards and nodes: any case, spaces about and between them folded, so that "db 1" finds "DB 1". */
export const nameKey = (name: string): string => name.trim().replace(/\s+/g, ' ').toLowerCase();

/** The supply's name in a table. */
export const SOURCE = 'source';
