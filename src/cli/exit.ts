/** How a command ends: the exit codes that other programs rely on, and the errors that lead to them. */

export const EXIT = { good: 0, refusedInput: 1, usage: 2, checkFailed: 3 } as const;

/** Input that cannot be taken as it is; the message says where and what. */
export class RefusedInput extends Error {
  override readonly name = 'RefusedInput';
}

/** A command line that does not say what to do. */
export class UsageError extends Error {
  override readonly name = 'UsageError';
}

/** A check that was carried out and not passed. */
export class CheckFailed extends Error {
  override readonly name = 'CheckFailed';
}
