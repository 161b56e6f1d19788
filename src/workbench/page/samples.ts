/** A sample workbook that is served with the page. */
export interface Sample {
  readonly file: string;
  readonly title: string;
}

const titleOf = (file: string): string => {
  const plain = file.replace(/\.xlsx$/, '').replace(/[-_]+/g, ' ');
  return plain.charAt(0).toUpperCase() + plain.slice(1);
};

/** The list is written when the page is built. */
export async function listSamples(): Promise<Sample[]> {
  const response = await fetch('samples/index.json');
  if (!response.ok) return [];
  const files: unknown = await response.json();
  return Array.isArray(files) ? files.filter((file): file is string => typeof file === 'string').map((file) => ({ file, title: titleOf(file) })) : [];
}

export async function fetchSample(file: string): Promise<Uint8Array> {
  const response = await fetch(`samples/${encodeURIComponent(file)}`);
  if (!response.ok) throw new Error(`The sample ${file} could not be loaded (${response.status}).`);
  return new Uint8Array(await response.arrayBuffer());
}
