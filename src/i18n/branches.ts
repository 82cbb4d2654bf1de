/** Names of what there is several times: the thing's own name, and which unit or module it belongs to. */
import type { Text } from './index';

/** `unit3` and `module2` taken apart; null for what is numbered in no such way. */
export function branchParts(id: string): { readonly kind: 'unit' | 'module'; readonly number: number } | null {
  const match = /^(unit|module)(\d+)$/.exec(id);
  return match ? { kind: match[1] as 'unit' | 'module', number: Number(match[2]) } : null;
}

/** "unit 3", or the id where it has no number. */
export function branchName(text: Text, id: string): string {
  const parts = branchParts(id);
  return parts ? text.t(`names.branch.${parts.kind}`, { number: parts.number }) : id;
}

/**
 * The name of `thing` or `thing@unit3`, looked up below one of these keys, the first that has it: "return air, unit 3".
 * Null where no catalogue has it.
 */
export function nameAt(text: Text, id: string, ...below: readonly string[]): string | null {
  const [thing, branch] = id.split('@') as [string, string | undefined];
  for (const key of below) {
    const what = text.maybe(`${key}.${thing}`);
    if (what === null) continue;
    const parts = branch === undefined ? null : branchParts(branch);
    return parts ? text.t(`names.at.${parts.kind}`, { what, number: parts.number }) : what;
  }
  return null;
}
