/** Why an action cannot be done. Texts are made from the code by the catalogues. */
export const REFUSALS = [
  'attempt-closed',
  'unknown-place',
  'not-in-toolbag',
  'does-not-fit',
  'nothing-to-read',
  'no-such-channel',
  'needs-isolation',
  'no-such-note',
  'struck-note',
  'bad-inputs',
  'no-saturation',
  'bad-chips',
  'cause-not-here',
  'moment-declared',
  'moment-too-early',
  'moment-past',
  'no-verdict',
  'note-on-both-sides',
  'rival-is-verdict',
  'nothing-repaired',
  'step-twice',
  'no-change',
  'not-on-this-machine',
  'out-of-range',
  'no-link',
  'unit-silent',
  'hint-too-soon',
  'no-hint-now',
  'nothing-to-undo',
] as const;
export type RefusalCode = (typeof REFUSALS)[number];

/** Thrown by `apply`; the state it was asked of stays as it is. `what` names the thing that was refused. */
export class ActionRefused extends Error {
  override readonly name = 'ActionRefused';

  constructor(
    readonly code: RefusalCode,
    readonly what: string,
  ) {
    super(`${code}: ${what}`);
  }
}

/** Throws ActionRefused unless the condition holds. */
export function ensure(condition: boolean, code: RefusalCode, what: string | number): asserts condition {
  if (!condition) throw new ActionRefused(code, String(what));
}
