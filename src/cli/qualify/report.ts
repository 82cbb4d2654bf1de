/** The qualification as a Markdown document. Nothing in it depends on when or where it was computed. */
import { PHYSICS_VERSION, PLANTS, type PlantId } from '../../../physics';
import { type Count, count, type Finding, figure, plantOf, reasonFor, verdictOf } from '../../../physics/qualification';

/** A section's name and what it found. */
export type Sections = readonly (readonly [name: string, findings: readonly Finding[]])[];

export const TOGETHER = 'machines of every plant';

export function rowName(plant: PlantId | null): string {
  return plant ?? TOGETHER;
}

/** The plants, then what was drawn over all of them together: whatever has tests. */
export function byPlant(findings: readonly Finding[]): (readonly [PlantId | null, readonly Finding[]])[] {
  const groups: (PlantId | null)[] = [...(Object.keys(PLANTS) as PlantId[]), null];
  return groups
    .map((plant) => [plant, findings.filter((one) => plantOf(one) === plant)] as const)
    .filter(([, group]) => group.length > 0);
}

const cell = (text: string): string => text.replaceAll('|', '\\|').replaceAll('\n', ' ');
const row = (cells: readonly (string | number)[]): string =>
  `| ${cells.map((each) => cell(String(each))).join(' | ')} |`;
const header = (names: readonly string[], numbers: number): string[] => [
  row(names),
  `|${names.map((_, i) => (i < names.length - numbers ? ' --- ' : ' ---: ')).join('|')}|`,
];
const COUNTS = ['tests', 'hold', 'miss, with a reason', 'fail'];
const counted = ({ tests, held, missed, failed }: Count): number[] => [tests, held, missed, failed];

/** The rows of the table of counts that one section fills. */
export function countRows(section: string, findings: readonly Finding[]): string[] {
  return byPlant(findings).map(([plant, group]) => row([section, rowName(plant), ...counted(count(group))]));
}

function countTables(sections: Sections): string[] {
  const all = sections.flatMap(([, findings]) => findings);
  return [
    '## Counts',
    '',
    ...header(['plant', ...COUNTS], 4),
    ...byPlant(all).map(([plant, group]) => row([rowName(plant), ...counted(count(group))])),
    row(['**all**', ...counted(count(all))]),
    '',
    ...header(['section', 'plant', ...COUNTS], 4),
    ...sections.flatMap(([name, findings]) => countRows(name, findings)),
    '',
  ];
}

function range({ low, high, unit }: Finding): string {
  const side = unit === '' || unit === '-' ? '' : ` ${unit}`;
  if (low === high) return `${figure(low)}${side}`;
  if (high === Number.POSITIVE_INFINITY) return `≥ ${figure(low)}${side}`;
  if (low === Number.NEGATIVE_INFINITY) return `≤ ${figure(high)}${side}`;
  return `${figure(low)} … ${figure(high)}${side}`;
}

/** Failures first, then the misses under their reasons. */
function departures(findings: readonly Finding[]): string[] {
  const line = (one: Finding): string => `- \`${one.id}\`: ${figure(one.ours)}, asked ${range(one)}`;
  const failed = findings.filter((one) => verdictOf(one) === 'failed');
  const reasons = new Map<string, Finding[]>();
  for (const one of findings) {
    const reason = verdictOf(one) === 'missed' ? reasonFor(one.id) : null;
    if (reason !== null) reasons.set(reason, [...(reasons.get(reason) ?? []), one]);
  }
  return [
    ...(failed.length > 0 ? ['## What fails', '', ...failed.map(line), ''] : []),
    ...(reasons.size > 0 ? ['## Where the model and a source differ, and why', ''] : []),
    ...[...reasons].flatMap(([reason, group]) => [reason, '', ...group.map(line), '']),
  ];
}

function everyTest(sections: Sections, sources: readonly string[]): string[] {
  const all = sections.flatMap(([, findings]) => findings);
  return byPlant(all).flatMap(([plant]) => [
    `## Every test: ${rowName(plant)}`,
    '',
    ...sections.flatMap(([name, findings]) => {
      const mine = findings.filter((one) => plantOf(one) === plant);
      if (mine.length === 0) return [];
      return [
        `### ${name}`,
        '',
        ...header(['test', 'what', 'verdict', 'source', 'asked', 'ours'], 2),
        ...mine.map((one) =>
          row([one.id, one.what, verdictOf(one), sources.indexOf(one.source) + 1, range(one), figure(one.ours)]),
        ),
        '',
      ];
    }),
  ]);
}

/** @param command what writes this document anew */
export function markdownReport(sections: Sections, command: string): string {
  const all = sections.flatMap(([, findings]) => findings);
  const sources = [...new Set(all.map(({ source }) => source))];
  return `${[
    '# Qualification of the machines',
    '',
    `Physics ${PHYSICS_VERSION}. Written by \`${command}\`; it is not edited by hand.`,
    '',
    'Each test asks the model for a figure and compares it with what a source allows. A test that does not hold is either a *miss*, whose reason stands below, or it *fails*. Sizes marked as common practice are from memory and reviewed by people of the trade, not measured. Readings: `Te`, `Tc` evaporating and condensing temperature (°C), `ps`, `pd` suction and discharge pressure (kPa absolute), `SH`, `SHout`, `SHcomp` superheat at the service valve, the coil’s outlet and the compressor (K), `SC` subcooling (K), `Td` discharge line (°C), `DSH` discharge superheat (K), `drop`, `rise` of the indoor and outdoor air (K), `effort` power per cooling. Air is at 35 °C outdoors and 27/19 °C indoors unless a test says otherwise.',
    '',
    ...countTables(sections),
    ...departures(all),
    '## Sources',
    '',
    ...sources.map((source, i) => `${i + 1}. ${source}`),
    '',
    ...everyTest(sections, sources),
  ]
    .join('\n')
    .trimEnd()}\n`;
}
