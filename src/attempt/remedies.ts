/** What each remedy does to what is wrong with the machine, and what workmanship it asks for. */
import type { FamilyId, FaultFamily, Faults, PlantId } from '../../physics/types';
import type { CallBack } from './state';
import { type ProcedureStep, REMEDIES, type RemedyId, type RootCause } from './types';

/** How the chosen steps compare with those that the work needs. */
export interface Procedure {
  readonly needed: readonly ProcedureStep[];
  readonly missing: readonly ProcedureStep[];
  readonly outOfOrder: readonly ProcedureStep[];
  readonly needless: readonly ProcedureStep[];
  /** 0…1: steps in the right order over steps needed, a tenth off for each needless one */
  readonly share: number;
}

export interface Remedy {
  /** families that it takes away */
  readonly cures: readonly FamilyId[];
  /** the refrigerant circuit is opened: recovered, evacuated and charged by weight if the steps are taken */
  readonly opensCircuit: boolean;
  /** the work itself without the steps, simulated seconds (from memory) */
  readonly seconds: number;
  readonly steps: readonly ProcedureStep[];
}

/** Common practice, no source: the order in which an opened circuit is brought back into service. */
const OPEN_CIRCUIT: readonly ProcedureStep[] = [
  'isolate',
  'recover',
  'nitrogen-purge',
  'new-drier',
  'pressure-test',
  'evacuate-and-hold',
  'weigh-in',
  'restart-and-settle',
  'record',
];
const DRY_WORK: readonly ProcedureStep[] = ['isolate', 'restart-and-settle', 'record'];
const ALLOWANCE: readonly ProcedureStep[] = ['weigh-in', 'restart-and-settle', 'record'];
const RUNNING_WORK: readonly ProcedureStep[] = ['restart-and-settle', 'record'];
const ELECTRIC: readonly ProcedureStep[] = ['isolate', 'discharge-capacitor', 'restart-and-settle', 'record'];
const CHARGE_ONLY: readonly ProcedureStep[] = ['recover', 'weigh-in', 'restart-and-settle', 'record'];

const opened = (cures: readonly FamilyId[], seconds: number): Remedy => ({
  cures,
  opensCircuit: true,
  seconds,
  steps: OPEN_CIRCUIT,
});
const closed = (cures: readonly FamilyId[], seconds: number, steps: readonly ProcedureStep[]): Remedy => ({
  cures,
  opensCircuit: false,
  seconds,
  steps,
});

export const REMEDY_RULES: Readonly<Record<RemedyId, Remedy>> = {
  'find-leak-mend-and-weigh-in': opened([], 2700),
  'top-up-only': closed([], 900, ['weigh-in', 'restart-and-settle', 'record']),
  'recover-excess': closed([], 600, CHARGE_ONLY),
  'weigh-in-allowance': closed(['line-charge-not-added'], 600, ALLOWANCE),
  'relay-lines': opened(['lines-too-long'], 14400),
  'recover-evacuate-recharge': opened([], 600),
  'replace-drier': opened(['drier-restriction'], 1200),
  'replace-line-section': opened(['liquid-line-kink'], 2400),
  'open-service-valve': closed(['service-valve-throttled'], 180, RUNNING_WORK),
  'insulate-lines': closed(['liquid-line-heated', 'suction-line-uninsulated'], 3600, RUNNING_WORK),
  'clean-outdoor-coil': closed(['condenser-dirty'], 2400, DRY_WORK),
  'clear-air-path': closed(['air-recirculation'], 1800, RUNNING_WORK),
  'replace-outdoor-fan-motor': closed(['condenser-fan-slow'], 3600, ELECTRIC),
  'replace-filter': closed(['filter-dirty'], 300, DRY_WORK),
  'clean-indoor-coil': closed(['evaporator-dirty'], 3600, DRY_WORK),
  'replace-indoor-fan-motor': closed(['evaporator-fan-slow'], 3600, ELECTRIC),
  'seal-duct': closed(['duct-leak', 'return-duct-leak'], 3600, RUNNING_WORK),
  'replace-compressor': opened(['compressor-leak-by', 'compressor-worn'], 7200),
  'fit-right-orifice': opened(['orifice-oversize', 'orifice-undersize'], 2400),
  'replace-valve': opened(
    [
      'metering-valve-stuck-closing',
      'metering-valve-stuck-opening',
      'metering-valve-not-closing',
      'bulb-charge-lost',
      'metering-valve-superheat-set',
    ],
    3600,
  ),
  'fasten-bulb': closed(['bulb-loose'], 900, DRY_WORK),
  'set-superheat': closed(['metering-valve-superheat-set'], 1200, ['restart-and-settle', 'record']),
  'replace-solenoid': opened(['solenoid-stuck-open', 'solenoid-stuck-closed'], 2400),
  'replace-fan-switch': closed(['fan-cycling-control-failed'], 1200, DRY_WORK),
  'replace-defrost-clock': closed(['defrost-not-starting'], 1800, DRY_WORK),
  'replace-defrost-heater': closed(['defrost-heater-dead'], 3600, DRY_WORK),
  'replace-capacitor': closed(['capacitor-weak'], 900, ELECTRIC),
  'replace-fan-capacitor': closed(['fan-capacitor-weak'], 900, ELECTRIC),
  'replace-contactor': closed(['contactor-burnt'], 1800, ELECTRIC),
  'mend-supply': closed(['supply-voltage-low', 'phase-lost'], 3600, DRY_WORK),
  'replace-thermistor': closed(
    ['thermistor-drift', 'thermistor-open', 'thermistor-shorted', 'defrost-not-ending'],
    900,
    DRY_WORK,
  ),
  'replace-transducer': closed(['pressure-transducer-offset'], 1200, DRY_WORK),
  'fasten-sensor': closed(['thermistor-out-of-its-pocket'], 600, DRY_WORK),
  'clear-drain': closed(['drain-blocked'], 1200, DRY_WORK),
  'plug-in-valve-coil': closed(['metering-valve-coil-unplugged'], 900, DRY_WORK),
  'move-thermostat': closed(['thermostat-misplaced'], 2400, RUNNING_WORK),
  'replace-valve-station': opened(['check-valve-leaking'], 4500),
  'shift-reversing-valve': closed(['reversing-valve-half-shifted'], 900, ['restart-and-settle', 'record']),
  'replace-reversing-valve': opened(['reversing-valve-leak', 'reversing-valve-half-shifted'], 7200),
  'swap-port-pipes': opened(['changeover-ports-crossed'], 5400),
  'open-module-valve': closed(['module-valve-shut'], 180, RUNNING_WORK),
  'set-addresses': closed(['unit-address-crossed'], 1200, DRY_WORK),
  'set-unit-capacity': closed(['unit-capacity-set-wrong'], 600, DRY_WORK),
  'make-bus-clamp-good': closed(['communication-lost'], 900, DRY_WORK),
  'nothing-to-mend': closed([], 120, ['record']),
};

/** What can be done on a plant: all that needs no part of its own, and what works on a part that the plant has. */
export function remediesOn(plant: PlantId, families: readonly FaultFamily[]): RemedyId[] {
  const has = (id: FamilyId) => families.some((family) => family.id === id && family.plants.includes(plant));
  return REMEDIES.filter((remedy) => {
    const { cures } = REMEDY_RULES[remedy];
    return cures.length === 0 || cures.some(has);
  });
}

/** Simulated seconds of each step (from memory). */
export const STEP_SECONDS: Readonly<Record<ProcedureStep, number>> = {
  isolate: 60,
  recover: 900,
  'nitrogen-purge': 180,
  'new-drier': 900,
  'pressure-test': 1800,
  'evacuate-and-hold': 2700,
  'weigh-in': 900,
  'discharge-capacitor': 60,
  'restart-and-settle': 900,
  record: 120,
};

/**
 * Assumptions about work done badly, from memory: charge added or taken out by feel misses by a tenth; a circuit
 * closed again without evacuating keeps most of its air (filled with air at 1 atm an R-410A circuit is about 0.08 on
 * the scale of `non-condensable`).
 */
const BY_FEEL = 0.1;
const AIR_LEFT_IN = 0.05;
/** A charge this close to the nameplate's counts as right, share. */
export const CHARGE_WITHIN = 0.05;

/** Charge beyond the nameplate's, share; negative = too little. */
export function netCharge(faults: Faults): number {
  return (faults.overcharge ?? 0) - (faults.undercharge ?? 0);
}

/** The same faults with another charge, held inside what the physics covers. */
export function withCharge(faults: Faults, net: number, families: readonly FaultFamily[]): Faults {
  const { overcharge: _over, undercharge: _under, ...rest } = faults;
  if (net === 0) return rest;
  const id = net > 0 ? 'overcharge' : 'undercharge';
  const max = families.find((family) => family.id === id)?.max ?? Math.abs(net);
  return { ...rest, [id]: Math.min(Math.abs(net), max) };
}

/** What is wrong with the machine after the remedy was carried out in these steps. */
export function applyRemedy(
  faults: Faults,
  remedy: RemedyId,
  steps: readonly ProcedureStep[],
  families: readonly FaultFamily[],
): Faults {
  const rule = REMEDY_RULES[remedy];
  const net = netCharge(faults);
  const left = without(faults, rule.cures);
  if (remedy === 'top-up-only') return withCharge(left, net < 0 ? 0 : net + BY_FEEL, families);
  if (remedy === 'recover-excess') return withCharge(left, net > 0 ? 0 : net - BY_FEEL, families);
  if (!rule.opensCircuit) return left;

  const drier = steps.includes('new-drier') ? without(left, ['drier-restriction']) : left;
  const charged = withCharge(drier, steps.includes('weigh-in') ? 0 : -BY_FEEL, families);
  const air = steps.includes('evacuate-and-hold') ? 0 : Math.max(AIR_LEFT_IN, charged['non-condensable'] ?? 0);
  const dry = without(charged, ['non-condensable']);
  return air === 0 ? dry : { ...dry, 'non-condensable': air };
}

function without(faults: Faults, families: readonly FamilyId[]): Faults {
  return Object.fromEntries(Object.entries(faults).filter(([key]) => !families.includes(familyOf(key))));
}

/** `thermistor-drift:suctionLine` is a `thermistor-drift`, `filter-dirty@unit3` a `filter-dirty`. */
export function familyOf(key: string): FamilyId {
  return key.split(/[:@]/)[0] as FamilyId;
}

/** True when nothing is wrong any more (what hoses took counts as long as the charge is still within its tolerance). */
export function isSound(faults: Faults): boolean {
  const rest = Object.entries(without(faults, ['overcharge', 'undercharge']));
  return rest.every(([, severity]) => severity === 0) && Math.abs(netCharge(faults)) <= CHARGE_WITHIN;
}

/** Why the van has to come back: a leak that nobody mended, or a cause that is still there. */
export function callBackAfter(found: Faults, after: Faults, remedies: readonly RemedyId[]): CallBack | null {
  const leaks = (found.undercharge ?? 0) > 0 && !remedies.includes('find-leak-mend-and-weigh-in');
  if (!isSound(after)) return 'cause-left';
  return leaks ? 'leak-left' : null;
}

/** A machine that was sound has no root cause but what the customer expected of it. */
export function rootFits(chosen: RootCause | null, truth: RootCause | null): boolean {
  return truth === null ? chosen === null || chosen === 'customer-expectation' : chosen === truth;
}

/** Compares the chosen steps with the needed ones by their longest common order. */
export function markProcedure(remedy: RemedyId, chosen: readonly ProcedureStep[]): Procedure {
  const needed = REMEDY_RULES[remedy].steps;
  const inOrder = longestCommonOrder(needed, chosen);
  const needless = chosen.filter((step) => !needed.includes(step));
  return {
    needed,
    missing: needed.filter((step) => !chosen.includes(step)),
    outOfOrder: chosen.filter((step) => needed.includes(step) && !inOrder.includes(step)),
    needless,
    share: Math.max(0, inOrder.length / needed.length - 0.1 * needless.length),
  };
}

/** Steps of the longest sequence that both lists hold in this order (each step occurs at most once in a list). */
function longestCommonOrder(a: readonly ProcedureStep[], b: readonly ProcedureStep[]): readonly ProcedureStep[] {
  let rows: (readonly ProcedureStep[])[] = Array.from({ length: b.length + 1 }, () => []);
  for (const step of a) {
    const next: (readonly ProcedureStep[])[] = [[]];
    b.forEach((other, j) => {
      const longer = rows[j + 1]!.length >= next[j]!.length ? rows[j + 1]! : next[j]!;
      next.push(step === other ? [...rows[j]!, step] : longer);
    });
    rows = next;
  }
  return rows.at(-1)!;
}

export function repairSeconds(remedy: RemedyId, steps: readonly ProcedureStep[]): number {
  return steps.reduce((sum, step) => sum + STEP_SECONDS[step], REMEDY_RULES[remedy].seconds);
}
