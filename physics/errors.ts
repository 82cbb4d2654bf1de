/** Why the physics refuses: it never returns NaN or a plausible-looking number instead. */
export type PhysicsErrorCode =
  /** A state outside what the equation covers (temperature limit, wrong side of saturation). */
  | 'range'
  /** A pressure beyond the end of a fluid's tables. */
  | 'table-end'
  /** An iteration stopped short of its tolerance. */
  | 'no-convergence'
  /** No steady running state: a safety switch stops the machine first; `limit` in the details says which. */
  | 'protection'
  /** Not a number, an unknown name, a combination that does not fix a state. */
  | 'bad-input';

export type PhysicsErrorDetails = Readonly<Record<string, number | string>>;

/** Typed refusal with the figures that led to it (SI), so that a caller can act on them and a person can read them. */
export class PhysicsError extends Error {
  override readonly name = 'PhysicsError';
  readonly code: PhysicsErrorCode;
  readonly details: PhysicsErrorDetails;

  constructor(code: PhysicsErrorCode, message: string, details: PhysicsErrorDetails = {}) {
    super(message);
    this.code = code;
    this.details = details;
  }
}
