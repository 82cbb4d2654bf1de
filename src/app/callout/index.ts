/** Everything that a callout needs, in one chunk that the first screen does not load. */
export { CalloutScreen } from './CalloutScreen';
export { openSession } from './open';
