/** Plain text tables for a terminal: first column left, the others right. */

export function textTable(header: readonly string[], rows: readonly (readonly string[])[]): string {
  const all = [header, ...rows];
  const widths = header.map((_, column) => Math.max(...all.map((row) => (row[column] ?? '').length)));
  const line = (row: readonly string[]) =>
    row
      .map((cell, column) => (column === 0 ? cell.padEnd(widths[column]) : cell.padStart(widths[column])))
      .join('  ')
      .trimEnd();
  return `${all.map(line).join('\n')}\n`;
}
