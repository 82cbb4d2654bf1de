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
    take: 'Take the {{instrument}} to the {{place}}. The reading notes itself.',
    superheat:
      'How much warmer is the suction line than boiling refrigerant? That is superheat. In the notebook, choose it, read the strip, subtract.',
    subcooling:
      'How much colder is the liquid line than condensing refrigerant? That is subcooling. In the notebook, choose it, read the strip, subtract.',
    approach:
      'How much warmer is the liquid than the air that cools it? Find it among the other sums, “liquid line over outdoor air”, and subtract.',
    'line-difference':
      'Does the liquid line lose warmth across the drier? Among the other sums, choose “difference over the drier”, and subtract.',
    'air-drop': 'How much colder is the air that comes out? Find “indoor air drop” among the other sums, and subtract.',
    'air-rise':
      'How much warmer does the outdoor air become? Find “outdoor air rise” among the other sums, and subtract.',
    twin: 'Beside each number stands the same reading on a healthy twin. Which one is not like the twin’s?',
    stake: 'Three causes could do this. Twenty chips are your belief. Move some, then declare.',
    predict:
      'Choose one more reading that would tell your two leading causes apart. Before you take it: will it lie below the twin’s, be alike, or lie above?',
    telling: 'Now take it.',
    verdict: 'Commit. Name the cause, its best rival, and the readings that part them.',
    repair: 'Mend it: choose the remedy, the steps in order, and why it happened.',
    verify: 'Let fifteen minutes pass. Take three readings again, and choose them as proof.',
  },
  missing: 'Still to read: {{places}}.',
  predict: { lower: 'below', same: 'alike', higher: 'above' },
  predicted: 'You said: {{said}}. It was: {{was}}.',
} as const;
