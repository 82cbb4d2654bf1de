/** The saturation lines of one refrigerant, as a pressure–temperature table shows them. */
export interface Saturation {
  /** K at p Pa absolute on the dew line (all vapour); null beyond the ends of the table */
  tDew(p: number): number | null;
  /** the same on the bubble line (all liquid) */
  tBubble(p: number): number | null;
}
