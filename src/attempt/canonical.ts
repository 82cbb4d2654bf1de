/** One text for one value, and a check value for a text. */

/** JSON with the keys of every object in order, so that equal values give equal texts. */
export function canonicalJson(value: unknown): string {
  return JSON.stringify(value, (_key, each: unknown) => {
    if (typeof each !== 'object' || each === null || Array.isArray(each)) return each;
    return Object.fromEntries(Object.entries(each).sort(([a], [b]) => (a < b ? -1 : 1)));
  });
}

const CRC_TABLE = Uint32Array.from({ length: 256 }, (_, byte) => {
  let crc = byte;
  for (let bit = 0; bit < 8; bit += 1) crc = crc & 1 ? (crc >>> 1) ^ 0xedb88320 : crc >>> 1;
  return crc >>> 0;
});

/**
 * CRC-32 (reflected polynomial 0xEDB88320, as in ISO 3309) over the UTF-16 code units, low byte first; eight hex digits.
 * Finds accidents, proves nothing against intent.
 */
export function checkValue(text: string): string {
  let crc = 0xffffffff;
  for (let i = 0; i < text.length; i += 1) {
    const unit = text.charCodeAt(i);
    crc = CRC_TABLE[(crc ^ unit) & 0xff]! ^ (crc >>> 8);
    crc = CRC_TABLE[(crc ^ (unit >>> 8)) & 0xff]! ^ (crc >>> 8);
  }
  return ((crc ^ 0xffffffff) >>> 0).toString(16).padStart(8, '0');
}
