/** Hands a file to the person before the page, under its own name. */
export function savePicture(name: string, content: Blob): void {
  const address = URL.createObjectURL(content);
  Object.assign(document.createElement('a'), { href: address, download: name }).click();
  // The browser reads the address after the click has returned.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}

/** A file's name out of a title. */
export const fileName = (title: string, ending: string): string => `${title.toLowerCase().replace(/[^a-z0-9]+/g, '-').replace(/^-|-$/g, '') || 'chart'}.${ending}`;
