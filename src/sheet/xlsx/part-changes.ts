import type { WorkbookPackage } from './package';
import { patchZip } from './zip/patch';

/** Parts as they will be: changes upon changes of one package, its file untouched. */
export class PartChanges {
  private readonly changes = new Map<string, string | null>();

  constructor(readonly parts: WorkbookPackage) {}

  text(part: string): string {
    return this.changes.get(this.name(part)) ?? this.parts.text(part);
  }

  set(part: string, text: string): void {
    this.changes.set(this.name(part), text);
  }

  remove(part: string): void {
    if (this.parts.has(part)) this.changes.set(this.name(part), null);
  }

  /** The file with all changes; the very same bytes without any. */
  file(): Uint8Array {
    const encoder = new TextEncoder();
    return patchZip(this.parts.bytes, new Map([...this.changes].map(([name, text]) => [name, text === null ? null : encoder.encode(text)])), this.parts.directory);
  }

  private name(part: string): string {
    return this.parts.has(part) ? this.parts.storedName(part) : part;
  }
}
