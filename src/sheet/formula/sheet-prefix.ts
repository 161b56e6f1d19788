/** The sheet that a prefix of a reference names, its exclamation mark included: `'Main''s board'!` is Main's board; '' without one. */
export const sheetOfPrefix = (prefix: string): string => prefix.replace(/!$/, '').replace(/^'([^]*)'$/, '$1').replace(/''/g, "'");
