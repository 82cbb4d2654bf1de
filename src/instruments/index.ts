/** Instruments: what they are, where they go, and what a reading with one shows. */
export { CATALOGUE, OWN_SENSES, PREPARING } from './catalogue';
export {
  accuracyAt,
  BIAS_SHARE,
  biasGroup,
  biasSd,
  COMPARED_WITHIN,
  NOISE_SHARE,
  noiseSd,
  rounded,
  STANDARD_ATMOSPHERE,
  ZERO_DRIFT,
} from './errors';
export { classOf, SENSES, type Sense, type SenseClass, senseOf, TOUCH } from './looks';
export {
  channelsAt,
  channelValue,
  firstReadingCost,
  instrumentsAt,
  isTransducer,
  isUnheard,
  kindOfChannel,
  linkQuantity,
  preparing,
  probeOf,
  readableAt,
  spillOf,
} from './places';
export { linkValue, type ReadingRequest, read, type Scene } from './read';
export { worse } from './settle';
export { type Stream, stream } from './streams';
export * from './types';
