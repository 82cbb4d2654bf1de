/** Where the figures of the qualification come from. */
export const SOURCES = {
  /** Bands, slopes, time figures and look-alikes reviewed by field service, commissioning and training; partly computed
   * with a general-purpose property library, else trade judgement from memory: common practice, no source. */
  review: 'trade review of this model (common practice, no source)',
  /** Ranges that a technician expects, from memory, no source. */
  field: 'common practice, no source',
  /** Rule table for a unit with a fixed orifice. */
  rossiBraun:
    'Rossi & Braun, HVAC&R Research 3(1), 1997, as reproduced by Li & Braun, Fault Detection and Diagnostics for Rooftop Air Conditioners, Table 1-1',
  /** Directions that the rule table does not have, from memory. */
  memory: 'direction from memory, high confidence',
  /** Judged from two published correlations. */
  envelope:
    'judged from NIST TN 1848 (2014) and Cheung & Braun, NREL/SR-5500-65030 (2015), evaluated at 26.7/19.4 °C and 35 °C',
  own: 'conservation law',
  /** What no source outside says: that it solves, names its errors, rests, grows one way, is sound at severity 0. */
  model: 'asked of the model itself (no source)',
} as const;
