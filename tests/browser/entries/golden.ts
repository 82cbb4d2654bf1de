/** What the browser test loads: the same replay, in the page's own engine. */
import type { Attempt } from '../../../src/attempt';
import { goldenResult } from '../../golden/run';

declare global {
  var replayGolden: (attempt: Attempt) => string;
}

globalThis.replayGolden = (attempt) => JSON.stringify(goldenResult(attempt));
