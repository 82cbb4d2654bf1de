// Do a technician's usual readings and one more part the look-alikes of the trade's review? npm run lookalikes -- [machines]
import { textTable } from '../src/cli/table';
import { LOOK_ALIKES, PairBench, type Told } from '../src/packs/lookAlikePairs';

const machines = Number(process.argv[2] ?? 25);
const rows: string[][] = [];
for (const pair of LOOK_ALIKES) {
  for (const mild of pair.mode === 'heating' ? [false] : [false, true]) {
    const bench = new PairBench(pair, mild);
    for (const side of ['A', 'B'] as const) {
      const told = Array.from({ length: machines }, (_, i) => bench.tell(side, i)).flatMap((each) => each ?? []);
      const share = (of: (one: Told) => number): string =>
        told.length === 0 ? '–' : `${((100 * told.filter((one) => of(one) >= 0.8).length) / told.length).toFixed(0)} %`;
      const mean = told.reduce((sum, { six }) => sum + six, 0) / told.length;
      rows.push([
        pair.id,
        mild ? '22 °C, air −10 %' : 'rated',
        side,
        String(told.length),
        share(({ five }) => five),
        share(({ six }) => six),
        mean.toFixed(3),
        often(told),
      ]);
      console.error(rows.at(-1)!.join('  '));
    }
  }
}
console.log(
  textTable(['pair', 'weather', 'side', 'run', 'told by five', 'and one more', 'mean belief', 'the one more'], rows),
);

function often(told: readonly Told[]): string {
  const counts = new Map<string, number>();
  for (const { further } of told) counts.set(further, (counts.get(further) ?? 0) + 1);
  return [...counts].sort((a, b) => b[1] - a[1])[0]?.[0] ?? '–';
}
