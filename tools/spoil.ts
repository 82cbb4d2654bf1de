// Does the check let bad packs through? npm run spoil -- [count] [pack …]: changed copies of good packs, most of them
// spoilt, some harmlessly changed; how many of each are refused, and whether a message says where, why and what mends it.
import type { Callout } from '../src/attempt/pack/types';
import { loadPack, shippedIds } from '../src/cli/packs';
import { shippedSubjects } from '../src/cli/shelf';
import { textTable } from '../src/cli/table';
import { Judge, type Judged, spoil } from '../src/packs/spoil';
import { WAYS } from '../src/packs/spoil/ways';

const words = process.argv.slice(2);
const count = words.length > 0 && Number.isFinite(Number(words[0])) ? Number(words.shift()) : 200;
const ids = words.length > 0 ? words : shippedIds();
const packs = await Promise.all(ids.map((id) => loadPack(id, process)));
const machine = ({ plant, refrigerant, conditions }: Callout) => JSON.stringify([plant, refrigerant, conditions]);
const shelf = new Map((await shippedSubjects()).map(({ callout, differential }) => [machine(callout), differential]));
const judge = new Judge((callout) => {
  const found = shelf.get(machine(callout));
  if (!found) throw new RangeError(`callout ${callout.id}: no differential for its machine in its weather`);
  return found;
});

const judged = spoil(packs, count, 'spoil').map((each) => judge.judge(each));
const rows = WAYS.map((way) => {
  const of = judged.filter((each) => each.way === way);
  const refused = of.filter((each) => each.refused);
  const told = refused.filter((each) => each.wellSaid).length;
  return [way.name, way.bad ? 'bad' : 'good', String(of.length), String(refused.length), String(told)];
});
console.log(textTable(['way', '', 'packs', 'refused', 'well said'], rows));
const wrong = (each: Judged) => each.way.bad !== (each.refused && (!each.way.bad || each.wellSaid));
for (const { way, callout, said } of judged.filter(wrong)) console.log(`${way.name}, ${callout}: ${said.join(' | ')}`);
const [bad, good] = [true, false].map((kind) => judged.filter(({ way }) => way.bad === kind));
const caught = bad.filter(({ refused, wellSaid }) => refused && wellSaid).length;
console.log(
  `bad packs refused with callout, why and mend: ${caught} of ${bad.length} (${percent(caught, bad.length)})`,
);
console.log(`good packs refused: ${good.filter(({ refused }) => refused).length} of ${good.length}`);

function percent(part: number, whole: number): string {
  return `${((100 * part) / whole).toFixed(1)} %`;
}
