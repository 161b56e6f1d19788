const table = Uint32Array.from({ length: 256 }, (_, index) => {
  let value = index;
  for (let bit = 0; bit < 8; bit++) value = value & 1 ? 0xedb88320 ^ (value >>> 1) : value >>> 1;
  return value >>> 0;
});

/** Check sum of a zip entry (ISO 3309, polynomial 0xEDB88320). */
export function crc32(bytes: Uint8Array): number {
  let sum = 0xffffffff;
  for (let index = 0; index < bytes.length; index++) sum = table[(sum ^ bytes[index]!) & 0xff]! ^ (sum >>> 8);
  return (sum ^ 0xffffffff) >>> 0;
}
