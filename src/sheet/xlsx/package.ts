import { quoted, refuse } from './refusal';
import { type Relationship, parseRelationships, relationshipsPart } from './relationships';
import { type XmlElement, childrenNamed, parseXml } from './xml/tree';
import { type ZipDirectory, type ZipEntry, partKey, readDirectory } from './zip/directory';
import { SIZE_LIMITS, type SizeLimits } from './zip/limits';
import { unpack, unpackStart } from './zip/unpack';

const CONTENT_TYPES = '[Content_Types].xml';
/** Comments and declarations before the first element of a part. */
const LONGEST_PROLOG = 1 << 18;
const XML_PART = /\.(xml|rels|vml)$/;

/** The parts of a workbook file. Only those that are asked for are unpacked; the bytes of the file are never changed. */
export class WorkbookPackage {
  private readonly entries: Map<string, ZipEntry>;
  private readonly linksOf = new Map<string, readonly Relationship[]>();
  private readonly types: { byPart: Map<string, string>; byExtension: Map<string, string> };

  constructor(readonly bytes: Uint8Array, readonly directory: ZipDirectory) {
    this.entries = new Map(directory.entries.map((entry) => [entry.key, entry]));
    if (!this.has(CONTENT_TYPES)) refuse(`The file is a zip, but no workbook: it lacks ${CONTENT_TYPES}.`);
    this.types = readTypes(parseXml(this.text(CONTENT_TYPES), CONTENT_TYPES));
    for (const entry of directory.entries) if (XML_PART.test(entry.key)) this.judgeProlog(entry);
  }

  /** Names of all parts, as stored. */
  get parts(): string[] {
    return this.directory.entries.filter((entry) => !entry.key.endsWith('/')).map((entry) => entry.name);
  }

  has(part: string): boolean {
    return this.entries.has(partKey(part));
  }

  /** The name of a part as stored in the file; targets of relationships may differ in case. */
  storedName(part: string): string {
    return this.entry(part).name;
  }

  content(part: string): Uint8Array {
    return unpack(this.bytes, this.entry(part));
  }

  /** Text of an XML part. A byte order mark stays in it, so that writing it back gives the same bytes. */
  text(part: string): string {
    const content = this.content(part);
    if ((content[0] === 0xff && content[1] === 0xfe) || (content[0] === 0xfe && content[1] === 0xff)) refuse(`${part} is written in UTF-16; only UTF-8 is read.`);
    const declared = /^\ufeff?<\?xml[^>]*?\sencoding\s*=\s*["']([^"']*)["']/.exec(new TextDecoder().decode(content.subarray(0, 200)))?.[1];
    if (declared !== undefined && !/^(utf-?8|us-ascii)$/i.test(declared)) refuse(`${part} is written in ${quoted(declared)}; only UTF-8 is read.`);
    try {
      return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(content);
    } catch {
      return refuse(`The file is damaged: ${part} is not written in UTF-8.`);
    }
  }

  /** Relationships of a part; of the package itself for ''. */
  relationships(part: string): readonly Relationship[] {
    let links = this.linksOf.get(part);
    if (!links) {
      const place = relationshipsPart(part);
      links = this.has(place) ? parseRelationships(this.text(place), part) : [];
      this.linksOf.set(part, links);
    }
    return links;
  }

  /** The part that relationships of one kind lead to; undefined where there is none or it leads out of the file. */
  related(part: string, kind: string): string | undefined {
    const target = this.relationships(part).find((link) => link.kind === kind)?.part;
    if (target !== undefined && !this.has(target)) refuse(`The file is damaged: ${quoted(target)}, the ${kind} of ${part || 'the package'}, is missing.`);
    return target;
  }

  contentType(part: string): string | undefined {
    const key = partKey(part);
    return this.types.byPart.get(key) ?? this.types.byExtension.get(key.slice(key.lastIndexOf('.') + 1));
  }

  private entry(part: string): ZipEntry {
    return this.entries.get(partKey(part)) ?? refuse(`The file is damaged: the part ${quoted(part)} is missing.`);
  }

  /** A declaration can stand before the first element only: no more than that is unpacked. */
  private judgeProlog(entry: ZipEntry): void {
    unpackStart(this.bytes, entry, (sofar) => {
      const start = sofar.replace(/<!--[^]*?(-->|$)|<\?[^]*?(\?>|$)/g, '');
      if (/<!(DOCTYPE|ENTITY)/i.test(start)) {
        refuse(`${entry.name} holds a DOCTYPE or entity declaration. No workbook needs one and it could hide other content; the file is not opened.`);
      }
      if (sofar.length > LONGEST_PROLOG) refuse(`${entry.name} holds no element in its first ${LONGEST_PROLOG} characters; the file is not opened.`);
      return /<[^!?]/.test(start);
    });
  }
}

function readTypes(root: XmlElement): { byPart: Map<string, string>; byExtension: Map<string, string> } {
  const pairs = (name: string, key: string): [string, string][] =>
    childrenNamed(root, name).map(({ attributes }) => [(attributes.get(key) ?? '').toLowerCase(), attributes.get('ContentType') ?? '']);
  return { byPart: new Map(pairs('Override', 'PartName').map(([name, type]) => [name.replace(/^\//, ''), type])), byExtension: new Map(pairs('Default', 'Extension')) };
}

/** Opens the package of a workbook file, or refuses it in words (WorkbookRefusal) without unpacking what is too large or damaged. */
export function openPackage(bytes: Uint8Array, limits: SizeLimits = SIZE_LIMITS): WorkbookPackage {
  if (bytes.length > limits.file) refuse(`The file has ${Math.round(bytes.length / 1e6)} MB; up to ${Math.round(limits.file / 1e6)} MB are read.`);
  return new WorkbookPackage(bytes, readDirectory(bytes, limits));
}
