const XLSX = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';

/** Hands a file to the person before the page, under its own name. */
export function download(name: string, bytes: Uint8Array): void {
  const address = URL.createObjectURL(new Blob([bytes as Uint8Array<ArrayBuffer>], { type: XLSX }));
  const link = Object.assign(document.createElement('a'), { href: address, download: name });
  link.click();
  // The browser reads the address after the click has returned.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
