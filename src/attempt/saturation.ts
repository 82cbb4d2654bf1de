/** The saturation lines of one refrigerant, as a pressure–temperature table shows them. */
export interface Saturation {
  /** K at p Pa absolute: dew line (all vapour), bubble line (all liquid) */
  tDew(p: number): number;
  tBubble(p: number): number;
}
