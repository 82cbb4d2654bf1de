/** A short word that changes with the content of a plain value: two 32-bit FNV-1a sums over its canonical JSON. */
export function fingerprint(value: unknown): string {
  const text = canonicalJson(value);
  return `${fnv(text, 0x811c9dc5)}${fnv(text, 0x01000193)}`;
}

function canonicalJson(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonicalJson).join(',')}]`;
  if (value === null || typeof value !== 'object') return JSON.stringify(value) ?? 'null';
  const entries = Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1));
  return `{${entries.map(([key, each]) => `${JSON.stringify(key)}:${canonicalJson(each)}`).join(',')}}`;
}

function fnv(text: string, basis: number): string {
  let hash = basis;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return (hash >>> 0).toString(16).padStart(8, '0');
}
