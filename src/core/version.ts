/** Version of the calculation core, as it goes on the print; package.json holds the same, and a test compares them. */
export const version = '0.1.0';
/** Day of that version. */
export const versionDate = '2026-11-25';
