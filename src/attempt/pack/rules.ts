/** Rules between the fields of a pack that already has the right shape. Each has a stable name and its own message. */
import type { RefrigerantId } from '../../../physics/fluids/fluid';
import { type CauseId, type FaultFamily, type PlantId, unitOf } from '../../../physics/types';
import { familyOf } from '../remedies';
import { type PackProblem, type Path, problem } from './problems';
import type { Callout, Pack } from './types';

/** What the rules must know of the machines. */
export interface MachineFacts {
  readonly families: readonly FaultFamily[];
  readonly refrigerants: (plant: PlantId) => readonly RefrigerantId[];
  readonly modes: (plant: PlantId) => readonly string[];
  /** ids of its indoor units where there are several */
  readonly units: (plant: PlantId) => readonly string[];
}

export function ruleProblems(pack: Pack, facts: MachineFacts): PackProblem[] {
  const found: PackProblem[] = [];
  const add = (rule: string, path: Path, expected: string, foundText?: string) =>
    found.push(problem(rule, pack, path, expected, foundText));

  const weights = sum(Object.values(pack.weights));
  if (Math.abs(weights - 100) > 1e-9) add('weights-sum', ['weights'], 'weights that sum to 100', `a sum of ${weights}`);

  const ids = pack.callouts.map((callout) => callout.id);
  pack.callouts.forEach((callout, index) => {
    const at = (...rest: PropertyKey[]) => ['callouts', index, ...rest];
    if (ids.indexOf(callout.id) !== index) add('callout-id-unique', at('id'), 'an id that no earlier callout has');
    if (callout.lookAlike !== undefined && (callout.lookAlike === callout.id || !ids.includes(callout.lookAlike))) {
      add('look-alike-known', at('lookAlike'), 'the id of another callout of this pack');
    }
    for (const { path, rule, expected, found: text } of calloutObjections(callout, facts)) {
      add(rule, at(...path), expected, text);
    }
  });
  return found;
}

interface Objection {
  rule: string;
  path: Path;
  expected: string;
  found?: string;
}

function calloutObjections(callout: Callout, facts: MachineFacts): Objection[] {
  return [
    ...machineObjections(callout, facts),
    ...tallyObjections(callout, facts),
    ...pairObjections(callout, facts),
    ...Object.entries(callout.faults).flatMap(([key, severity]) => faultObjections(callout, key, severity, facts)),
  ];
}

function machineObjections(callout: Callout, facts: MachineFacts): Objection[] {
  const found: Objection[] = [];
  const { plant, refrigerant, conditions, toolbag } = callout;
  const made = facts.refrigerants(plant);
  if (!made.includes(refrigerant)) {
    found.push({ rule: 'refrigerant-on-plant', path: ['refrigerant'], expected: `${made.join(' or ')} for ${plant}` });
  }
  const modes = facts.modes(plant);
  if (!modes.includes(conditions.mode)) {
    found.push({
      rule: 'mode-on-plant',
      path: ['conditions', 'mode'],
      expected: `${modes.join(' or ')} for ${plant}`,
    });
  }
  if (conditions.wetBulb > conditions.indoor) {
    const expected = `a wet bulb not above the dry bulb (${conditions.indoor} K)`;
    found.push({ rule: 'wet-bulb-below-dry-bulb', path: ['conditions', 'wetBulb'], expected });
  }
  toolbag.forEach((instrument, index) => {
    if (toolbag.indexOf(instrument) === index) return;
    found.push({ rule: 'toolbag-unique', path: ['toolbag', index], expected: 'each instrument once' });
  });
  const faulty = Object.keys(callout.faults).length > 0;
  if (faulty && callout.rootCause === null) {
    found.push({
      rule: 'root-cause-named',
      path: ['rootCause'],
      expected: 'a root cause, since the machine has a fault',
    });
  }
  return found;
}

function tallyObjections(callout: Callout, facts: MachineFacts): Objection[] {
  const found: Objection[] = [];
  const counts = Object.entries(callout.tally);
  const total = sum(counts.map(([, count]) => count));
  if (total !== 100) {
    found.push({ rule: 'tally-sum', path: ['tally'], expected: 'counts that sum to 100', found: `a sum of ${total}` });
  }
  for (const [cause] of counts) {
    if (cause === 'no-fault' || familyOn(facts, cause, callout)) continue;
    const expected = `only causes that can be felt on ${callout.plant} while it is called to ${callout.conditions.mode}`;
    found.push({ rule: 'tally-cause-on-plant', path: ['tally', cause], expected, found: cause });
  }
  // A cause with a prior of zero can never be believed, whatever the readings say.
  const truths = Object.keys(callout.faults).map((key): CauseId => familyOf(key));
  for (const cause of truths.length > 0 ? truths : (['no-fault'] as const)) {
    if ((callout.tally[cause] ?? 0) > 0) continue;
    const expected = `a count above 0 for the true cause, ${cause}`;
    found.push({ rule: 'true-cause-in-tally', path: ['tally', cause], expected });
  }
  return found;
}

function pairObjections(
  { plant, refrigerant, conditions, deliberatePair = [] }: Callout,
  facts: MachineFacts,
): Objection[] {
  const path = ['deliberatePair'];
  if (deliberatePair.length > 0 && new Set(deliberatePair).size < 2) {
    return [{ rule: 'pair-of-two', path, expected: 'two causes', found: `${deliberatePair[0]} twice` }];
  }
  return deliberatePair
    .filter((cause) => cause !== 'no-fault' && !familyOn(facts, cause, { plant, refrigerant, conditions }))
    .map((cause) => ({ rule: 'pair-on-plant', path, expected: `causes that can be felt on ${plant}`, found: cause }));
}

function faultObjections(callout: Callout, key: string, severity: number, facts: MachineFacts): Objection[] {
  const [name, target] = key.replace(/@.*/, '').split(':');
  const unit = unitOf(key);
  const path = ['faults', key];
  const family = familyOn(facts, name, callout);
  if (!family) {
    const known = facts.families.filter(({ id }) => familyOn(facts, id, callout)).map(({ id }) => id);
    const expected = `a fault of ${callout.plant}: ${known.join(', ')}`;
    return [{ rule: 'fault-on-plant', path, expected, found: `the fault "${name}"` }];
  }
  const found: Objection[] = [];
  if (family.targets ? !family.targets.some((each) => each === target) : target !== undefined) {
    const expected = family.targets
      ? `${name}: and one of ${family.targets.join(', ')}`
      : `${name} without a target after it`;
    found.push({ rule: 'fault-target', path, expected, found: `the key "${key}"` });
  }
  if (unit !== null && !(family.perUnit && facts.units(callout.plant).includes(unit))) {
    const units = family.perUnit ? facts.units(callout.plant) : [];
    const expected = units.length > 0 ? `one of ${units.join(', ')} after the @` : `${name} without a unit after it`;
    found.push({ rule: 'fault-unit', path, expected, found: `the key "${key}"` });
  }
  const size = family.signed ? Math.abs(severity) : severity;
  if (!(size > 0 && size <= family.max)) {
    const range = family.signed ? `from -${family.max} to ${family.max}, not 0` : `above 0, at most ${family.max}`;
    found.push({ rule: 'severity-range', path, expected: `a severity (${family.unit}) ${range}` });
  }
  return found;
}

function familyOn(
  facts: MachineFacts,
  id: string | undefined,
  { plant, refrigerant, conditions }: Pick<Callout, 'plant' | 'refrigerant' | 'conditions'>,
): FaultFamily | undefined {
  const isFelt = ({ modes }: FaultFamily) => modes?.[plant]?.includes(conditions.mode) !== false;
  const isBuilt = ({ plants, lacking }: FaultFamily) =>
    plants.includes(plant) && !lacking?.[plant]?.includes(refrigerant);
  return facts.families.find((family) => family.id === id && isBuilt(family) && isFelt(family));
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
