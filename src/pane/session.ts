/** What the pane remembers while the page is open, and no longer: nothing is stored. */

const RECENT_AT_MOST = 8;
let recent: readonly string[] = [];

/** Functions used last, the latest first. */
export const recentFunctions = (): readonly string[] => recent;

export function noteUse(functionName: string): void {
  recent = [functionName, ...recent.filter((name) => name !== functionName)].slice(0, RECENT_AT_MOST);
}
