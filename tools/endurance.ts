// Every plant at random, at length: npm run endurance -- [steady states] [four-hour runs] [plant …]
// Prints what solved, what did not and why, the worst books, the least entropy that a part made. Minutes to an hour.
import { PLANTS, type PlantId } from '../physics';
import { steadyDraws, timeDraws } from '../physics/qualification/anyMachine';

const [states = '10000', runs = '200', ...named] = process.argv.slice(2);
const plants = (named.length > 0 ? named : Object.keys(PLANTS)) as PlantId[];
const share = 1 / plants.length;

for (const [k, plant] of plants.entries()) {
  const started = process.cpuUsage();
  const steady = steadyDraws(Math.round(Number(states) * share), 9000 + k, [plant]);
  const percent = ((100 * steady.solved) / steady.drawn).toFixed(2);
  console.log(
    `${plant}: ${steady.solved} of ${steady.drawn} steady states (${percent} %), ${steady.named} of the others named;`,
    `energy ${steady.energy.toExponential(1)}, charge ${steady.mass.toExponential(1)} kg;`,
    `least entropy ${steady.entropy.toExponential(1)} W/K (${steady.entropyAt})`,
  );
  for (const { setup, why } of steady.unsolved.filter(({ why: text }) => !text.startsWith('protection'))) {
    console.log(`  ${why} – ${JSON.stringify(setup)}`);
  }
  const time = timeDraws(Math.round(Number(runs) * share), 5000 + 1000 * k, 4, [plant]);
  const { user } = process.cpuUsage(started);
  console.log(
    `  ${time.runs} runs of four hours: ${time.errors.length} errors, ${time.notNumbers} values that are no number,`,
    `charge within ${time.mass.toExponential(1)} kg, ${time.trips} trips, ${time.steps} steps; ${Math.round(user / 1e6)} s`,
  );
  for (const each of time.errors) console.log(`  ${each}`);
}
