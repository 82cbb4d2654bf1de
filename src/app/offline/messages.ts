/** What the page and its keeper of files say to each other. */

/** `check`: fetch what is missing and answer; `take-over`: begin now, without waiting for open pages to close. */
export type OfflineOrder = 'check' | 'take-over';

export interface OfflineAnswer {
  /** every file of the build lies on the device */
  readonly complete: boolean;
}
