/** CSV rows for people's spreadsheets. */
import { csvField } from '../attempt/csv';

export function csvLine(cells: readonly (string | number | null)[]): string {
  return `${cells.map(cell).join(',')}\r\n`;
}

/** Text that starts like a formula is marked as text, since spreadsheets would run it. */
function cell(value: string | number | null): string {
  if (value === null) return '';
  if (typeof value === 'number') return String(value);
  return csvField(/^[=+\-@\t\r]/.test(value) ? `'${value}` : value);
}
