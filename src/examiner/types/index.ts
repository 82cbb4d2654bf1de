/** What the examiner knows and says. It emits numbers and message keys; text is made by the catalogues. */
export type * from './belief';
export type * from './channel';
export type * from './debrief';
export type * from './differential';
export type * from './grade';
export type * from './hint';
export type * from './message';
export type * from './otherCause';
