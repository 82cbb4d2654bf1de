/**
 * Writes the golden replays anew: `npx tsx tests/golden/make.ts`. To be done only when the physics' version changes on
 * purpose, with the reason in the commit.
 */
import { writeFileSync } from 'node:fs';
import { apply, start } from '../../src/attempt';
import { GOLDEN_PACK } from './pack';
import { type Golden, goldenResult } from './run';
import { GOLDEN_SCRIPTS } from './scripts';

for (const { callout, seed, actions } of GOLDEN_SCRIPTS) {
  const { attempt } = actions.reduce(apply, start(GOLDEN_PACK, callout, seed));
  const golden: Golden = { physics: attempt.physics, attempt, result: goldenResult(attempt) };
  const file = new URL(`${callout}.golden.json`, import.meta.url);
  writeFileSync(file, `${JSON.stringify(golden, null, 1)}\n`);
  console.log(`wrote ${file.pathname}: ${attempt.actions.length} actions, ${golden.result.notes.length} notes`);
}
