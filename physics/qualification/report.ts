/** Findings as a plain text table, one line each. */
import type { Finding } from './finding';
import { reasonFor } from './misses';

export function figure(value: number): string {
  if (value === Number.POSITIVE_INFINITY) return '∞';
  if (value === Number.NEGATIVE_INFINITY) return '−∞';
  if (Number.isNaN(value)) return 'never';
  return value === 0 ? '0' : String(Number(value.toPrecision(4)));
}

export function reportTable(findings: readonly Finding[]): string {
  const held = findings.filter(({ holds }) => holds).length;
  const lines = findings.map((one) => {
    const reason = one.holds ? null : reasonFor(one.id);
    const mark = one.holds ? 'ok  ' : reason === null ? 'FAIL' : 'miss';
    const range = `${figure(one.low)} … ${figure(one.high)} ${one.unit}`;
    const line = `${mark}  ${one.id}: ${one.what}: ${figure(one.ours)} (${range}; ${one.source})`;
    return reason === null ? line : `${line}\n      ${reason}`;
  });
  return [...lines, `${held} of ${findings.length} hold`].join('\n');
}
