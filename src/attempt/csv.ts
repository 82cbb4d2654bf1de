/** Comma-separated values as in RFC 4180: CRLF, quotes doubled, a field quoted where it must be. */

export function csvField(text: string): string {
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

export function csvText(rows: readonly (readonly string[])[]): string {
  return rows.map((row) => `${row.map(csvField).join(',')}\r\n`).join('');
}

/** Where a text is not CSV: row and column count from 1. */
export class CsvError extends Error {
  override readonly name = 'CsvError';

  constructor(
    readonly row: number,
    readonly column: number,
    readonly what: string,
  ) {
    super(`row ${row}, column ${column}: ${what}`);
  }
}

/** The fields of every record. A last line break ends the last record, it does not begin another. Throws CsvError. */
export function parseCsv(text: string): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  let at = 0;
  while (at < text.length) {
    const { field, next } = text[at] === '"' ? quoted(text, at, rows.length + 1, row.length + 1) : plain(text, at);
    row.push(field);
    at = next;
    if (text[at] === ',') {
      at += 1;
      if (at < text.length) continue;
      row.push('');
    } else if (at < text.length && text[at] !== '\r' && text[at] !== '\n') {
      throw new CsvError(rows.length + 1, row.length, 'text after a closing quote');
    }
    if (text[at] === '\r') at += 1;
    if (text[at] === '\n') at += 1;
    rows.push(row);
    row = [];
  }
  return rows;
}

function plain(text: string, from: number): { field: string; next: number } {
  let next = from;
  while (next < text.length && !',\r\n'.includes(text[next]!)) next += 1;
  return { field: text.slice(from, next), next };
}

function quoted(text: string, from: number, row: number, column: number): { field: string; next: number } {
  let field = '';
  let at = from + 1;
  for (;;) {
    const end = text.indexOf('"', at);
    if (end < 0) throw new CsvError(row, column, 'a quote that is never closed');
    field += text.slice(at, end);
    if (text[end + 1] !== '"') return { field, next: end + 1 };
    field += '"';
    at = end + 2;
  }
}
