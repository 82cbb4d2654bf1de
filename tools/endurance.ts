// Every plant at random, at length: npm run endurance -- [steady states] [four-hour runs] [plant …]
// Prints what solved, what did not and why, the worst books, the least entropy that a part made, and the sums over all.
// A plant draws the same machines whether it is named alone or not. Minutes to an hour.
import { PLANTS, type PlantId } from '../physics';
import { steadyDraws, timeDraws } from '../physics/qualification/anyMachine';

const HOURS = 4;

const [states = '10000', runs = '200', ...named] = process.argv.slice(2);
const every = Object.keys(PLANTS) as PlantId[];
const plants = named.length > 0 ? (named as PlantId[]) : every;
/** what of `whole` falls to plant k, so that all together make it up */
const share = (whole: string, k: number): number =>
  Math.round((Number(whole) * (k + 1)) / plants.length) - Math.round((Number(whole) * k) / plants.length);

const all = {
  drawn: 0,
  solved: 0,
  named: 0,
  runs: 0,
  errors: 0,
  notNumbers: 0,
  mass: 0,
  massAtEnd: 0,
  trips: 0,
  steps: 0,
};
for (const [k, plant] of plants.entries()) {
  const place = every.indexOf(plant);
  const started = process.cpuUsage();
  const steady = steadyDraws(share(states, k), 9000 + place, [plant]);
  console.log(
    `${plant}: ${solvedOf(steady)}, ${steady.named} of the others named;`,
    `energy ${steady.energy.toExponential(1)}, charge ${steady.mass.toExponential(1)} kg;`,
    `least entropy ${steady.entropy.toExponential(1)} W/K (${steady.entropyAt})`,
  );
  for (const { setup, why } of steady.unsolved.filter(({ why: text }) => !text.startsWith('protection'))) {
    console.log(`  ${why} – ${JSON.stringify(setup)}`);
  }
  const time = timeDraws(share(runs, k), 5000 + 1000 * place, HOURS, [plant]);
  const { user } = process.cpuUsage(started);
  console.log(`  ${ranOf({ ...time, errors: time.errors.length })}; ${Math.round(user / 1e6)} s`);
  for (const each of time.errors) console.log(`  ${each}`);
  all.drawn += steady.drawn;
  all.solved += steady.solved;
  all.named += steady.named;
  all.runs += time.runs;
  all.errors += time.errors.length;
  all.notNumbers += time.notNumbers;
  all.mass = Math.max(all.mass, time.mass);
  all.massAtEnd = Math.max(all.massAtEnd, time.massAtEnd);
  all.trips += time.trips;
  all.steps += time.steps;
}
console.log(`all: ${solvedOf(all)}, ${all.named} of the others named; ${ranOf(all)}`);

function solvedOf({ solved, drawn }: { readonly solved: number; readonly drawn: number }): string {
  return `${solved} of ${drawn} steady states (${((100 * solved) / drawn).toFixed(2)} %)`;
}

function ranOf({
  runs: count,
  errors,
  notNumbers,
  mass,
  massAtEnd,
  trips,
  steps,
}: Omit<typeof all, 'drawn' | 'solved' | 'named'>): string {
  const hourly = ((massAtEnd * 1e6) / HOURS).toPrecision(2);
  return (
    `${count} runs of four hours: ${errors} errors, ${notNumbers} values that are no number, ` +
    `charge at the end within ${(massAtEnd * 1e6).toPrecision(2)} mg (${hourly} mg an hour), at any moment ${(mass * 1e6).toPrecision(2)} mg, ${trips} trips, ${steps} steps`
  );
}
