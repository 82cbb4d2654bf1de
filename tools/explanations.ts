// Are the explanations true? npm run explanations -- [texts] [pack …]
// Plays scripted trainees, derives every number of their debriefs anew from machines run one by one, and counts.
// Then misprints every tenth on purpose and counts what is found.

import { plantDescription } from '../physics';
import { loadPack, shippedIds } from '../src/cli/packs';
import { shippedSubjects } from '../src/cli/shelf';
import { judge } from '../src/examiner';
import { playTrainee, type TraineeId } from '../src/examiner/trainees';
import { createText } from '../src/i18n';
import { Audit } from '../src/packs/audit';
import { misprinted } from '../src/packs/misprints';
import { messageText } from '../src/panels/kit/message';

const [first, ...named] = process.argv.slice(2);
const wanted = Number(first ?? 200);
const packs = new Map(await Promise.all(shippedIds().map(async (id) => [id, await loadPack(id, process)] as const)));
const subjects = (await shippedSubjects()).filter(({ pack }) => named.length === 0 || named.includes(pack));
const trainees: readonly TraineeId[] = ['greedy', 'first-hunch', 'hasty', 'careful-slow', 'gauge-for-absolute'];
const english = createText('en', 'si');
const NUMBER = /\d+(?:[.,]\d+)?/g;

let texts = 0;
let numbers = 0;
let fewest = Number.POSITIVE_INFINITY;
let objected = 0;
let misprints = 0;
let found = 0;
const lengths: number[] = [];
for (let round = 0; texts < wanted; round++) {
  for (const [k, { pack, callout, differential }] of subjects.entries()) {
    if (texts >= wanted) break;
    // who reads everything on a machine with many units is at it for minutes
    const trainee = plantDescription(callout.plant).units ? 'greedy' : trainees[(round + k) % trainees.length];
    const state = playTrainee(trainee, {
      pack: packs.get(pack)!,
      callout: callout.id,
      seed: `explained/${round}`,
      differential,
    });
    const judged = judge(state, differential);
    const audit = new Audit(state, packs.get(pack)!, differential);
    const objections = audit.objections(judged);
    const said = judged.debrief.sentences.map((message) => messageText(english, message, state.site.atmosphere));
    const count = said.join(' ').match(NUMBER)?.length ?? 0;
    lengths.push(
      ...said.flatMap((line) => line.split(/(?<=[.?!])\s+/)).map((sentence) => sentence.split(/\s+/).length),
    );
    texts += 1;
    numbers += count;
    fewest = Math.min(fewest, count);
    if (count < 4 || objections.length > 0) {
      objected += 1;
      console.log(`${callout.id}, ${trainee}, ${count} numbers: ${said.join(' | ')}`);
      for (const { key, why } of objections) console.log(`    ${key}: ${why}`);
    }
    if (texts % 10 === 0 && objections.length === 0) {
      misprints += 1;
      const sentences = misprinted(judged.debrief.sentences, `${callout.id}/${round}`);
      const caught = audit.objections({ ...judged, debrief: { ...judged.debrief, sentences } }).length > 0;
      if (caught) found += 1;
      else
        console.log(
          `  misprint not found in ${callout.id}, ${trainee}: ${sentences.map((each) => messageText(english, each, state.site.atmosphere)).join(' | ')}`,
        );
    }
    process.stderr.write(`${texts} ${callout.id}\n`);
  }
}
lengths.sort((a, b) => a - b);
console.log(
  `${texts} explanations, ${numbers} numbers (at least ${fewest} each), ${objected} with an objection; ` +
    `${found} of ${misprints} misprints found; words a sentence: half up to ${lengths[Math.floor(lengths.length / 2)]}, 95 % up to ${lengths[Math.floor(0.95 * lengths.length)]}`,
);
