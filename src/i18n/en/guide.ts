/** The first ten minutes: one short sentence or two a step (450 words at most in all; a test counts). */
export const guide = {
  title: 'First callout',
  step: 'Step {{now}} of {{all}}',
  show: 'Show me',
  hide: 'Fold',
  unfold: 'Unfold',
  next: 'Seen',
  say: {
    feelSuction: 'Put your bare hand on the suction line. Tap it, then choose the hand.',
    feelLiquid:
      'Now put your hand on the liquid line. One pipe carries cold vapour home, the other carries liquid out.',
    protect: 'Next comes a gauge. Refrigerant can freeze skin and eyes. Decide: glasses and gloves?',
    gauge: 'Put the low-side gauge on the suction service port. The reading notes itself.',
    clamp: 'Put the pipe clamp on the suction line, beside the port.',
    sum: 'How much warmer is that pipe than boiling refrigerant? That is superheat. In the notebook, choose superheat, read the strip, subtract.',
    twin: 'Beside each number stands the same reading on a healthy twin. Which one is not like the twin’s?',
    stake: 'Three causes could do this. Twenty chips are your belief. Move some, then declare.',
    predict:
      'Choose one more reading that would tell your two leading causes apart. Before you take it: will it lie below the twin’s, be alike, or lie above?',
    telling: 'Now take it. If two readings make it, such as subcooling, take both and work it out.',
    verdict: 'Commit. Name the cause, its best rival, and the readings that part them.',
    repair: 'Mend it: choose the remedy, the steps in order, and why it happened.',
    verify: 'Let fifteen minutes pass. Take three readings again, and choose them as proof.',
  },
  predict: { lower: 'below', same: 'alike', higher: 'above' },
  predicted: 'You said: {{said}}. It was: {{was}}.',
} as const;
