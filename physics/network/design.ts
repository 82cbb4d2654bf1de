/** Compiling a network: its design point, once a variant and mode, and its rig. */
import { PhysicsError } from '../errors';
import { fluidTable } from '../fluids/fluid';
import type { Correlations } from '../parts/correlations';
import { networkData, plantDescription } from '../plants';
import { NOMINAL } from '../solve/compile';
import { checkConditions } from '../solve/conditions';
import type { Conditions, Controls, MachineSetup, UnitDemand } from '../types';
import { isSilent } from './bus';
import type { BranchData, NetworkData } from './data';
import { usualDemand } from './demands';
import { faultyNetwork, healthyNetwork, type NetworkDesign } from './faulty';
import { findSteady } from './outdoors';
import { NetworkRig } from './rig';

const designs = new Map<string, NetworkDesign & { readonly x: Float64Array }>();

/** What the machine hears of its rooms: nothing of a unit that does not answer. */
export function demandsOf(rig: NetworkRig, mode: Conditions['mode'], units: Controls['units']): UnitDemand[] {
  return askedOf(rig, mode, units).map((asked, i) => (isSilent(rig, i) ? 'off' : asked));
}

/** Whether a unit blows without being heard: its own board runs its fan on. */
export function blowsAlone(rig: NetworkRig, unit: number, units: Controls['units']): boolean {
  return isSilent(rig, unit) && askedOf(rig, rig.conditions.mode, units)[unit] !== 'off';
}

/** What each unit is asked: what the controls name for its room, else what the mode says (at once: every second room is heated). */
function askedOf(rig: NetworkRig, mode: Conditions['mode'], units: Controls['units']): UnitDemand[] {
  const asks = rig.data.units.map(({ id }, i): UnitDemand => {
    const asked = units?.[id] ?? usualDemand(mode, i);
    // two pipes carry one mode: who asks for the other gets nothing
    if (!rig.data.threePipes && asked !== mode) return 'off';
    return asked;
  });
  // a room whose unit answers to the next one's address switches that one, fan, valve and changeover together
  rig.effective.units.forEach(({ addressCrossed }, i) => {
    if (addressCrossed > 0 && i + 1 < asks.length) [asks[i], asks[i + 1]] = [asks[i + 1], asks[i]];
  });
  return asks;
}

/** The healthy machine in the weather of a mode's rating point, all rooms blown through. */
function rated(
  plant: MachineSetup['plant'],
  refrigerant: MachineSetup['refrigerant'],
  mode: Conditions['mode'],
  correlations?: Correlations,
): { rig: NetworkRig; demands: UnitDemand[] } {
  const data = following(networkData(plant, refrigerant), correlations);
  const conditions = plantDescription(plant).modes[mode] ?? plantDescription(plant).designConditions;
  const rig = new NetworkRig(fluidTable(refrigerant), data, healthyNetwork(data), conditions);
  const room = rig.roomFound();
  for (let i = 0; i < data.units.length; i++) rig.setUnitAir(i, room, false, true);
  return { rig, demands: demandsOf(rig, mode, undefined) };
}

/** The healthy machine at the rating point of a mode, all rooms served, running by its own control. */
export function networkDesign(
  plant: MachineSetup['plant'],
  refrigerant: MachineSetup['refrigerant'],
  mode: Conditions['mode'],
  correlations?: Correlations,
): NetworkDesign & { readonly x: Float64Array } {
  const key = `${plant}/${refrigerant}/${mode}/${correlations ?? 'own'}`;
  const known = designs.get(key);
  if (known) return known;
  const { rig, demands } = rated(plant, refrigerant, mode, correlations);
  const { x } = findSteady(rig, demands, null, false, null);
  const { network } = rig;
  const { compressor } = network;
  const boiling = network.branches.find((b) => b.role === 'evaporator');
  const design = {
    x,
    openings: network.units.map((b) => b.opening),
    point: {
      massFlow: network.massFlow,
      dischargeFlow: compressor.cylinderFlow,
      liquidFlow: network.valveFlow,
      pHigh: network.plainCooling ? network.port[0] : network.liquid[0],
      pLow: boiling?.pIn ?? network.low[0],
      pDischarge: network.high[0],
      pSuction: network.low[0],
      rhoDischarge: compressor.rhoDischarge,
      rhoLiquid: network.units[0].rhoLiquid,
      rhoSuction: network.rhoSuction,
      opening: network.units[0].opening,
    },
  };
  designs.set(key, design);
  return design;
}

const starts = new Map<string, Float64Array | null>();

/**
 * Where a search begins: the healthy machine at the rating point of its mode. At full speed its outdoor side balances
 * elsewhere than at the speed of its own choice, so that state is a start of its own; null where it has none.
 */
export function searchStart(
  { plant, refrigerant, conditions: { mode }, correlations }: MachineSetup,
  fixedSpeed: boolean,
): Float64Array | null {
  const { x } = networkDesign(plant, refrigerant, mode, correlations);
  if (!fixedSpeed) return x;
  const key = `${plant}/${refrigerant}/${mode}/${correlations ?? 'own'}`;
  const known = starts.get(key);
  if (known !== undefined) return known;
  const { rig, demands } = rated(plant, refrigerant, mode, correlations);
  let start: Float64Array | null = null;
  try {
    // a held speed is no unknown
    const warm = x.filter((_, i) => i !== 4);
    start = findSteady(rig, demands, null, true, warm).x;
  } catch (error) {
    if (!(error instanceof PhysicsError)) throw error;
  }
  starts.set(key, start);
  return start;
}

/** Throws PhysicsError `bad-input` for unknown plants, refrigerants, faults or impossible conditions. */
export function compileNetwork(setup: MachineSetup): NetworkRig {
  const { plant, refrigerant, conditions, nuisance, correlations } = setup;
  const data = following(networkData(plant, refrigerant), correlations);
  checkConditions(plantDescription(plant), conditions);
  const design = networkDesign(plant, refrigerant, conditions.mode, correlations);
  const effective = faultyNetwork(data, setup, { ...NOMINAL, ...nuisance }, design);
  return new NetworkRig(fluidTable(refrigerant), data, effective, conditions);
}

/** The same machine with coils that follow these correlations. */
function following(data: NetworkData, correlations: Correlations = 'own'): NetworkData {
  if (correlations === 'own') return data;
  const branch = <Each extends BranchData>(each: Each): Each => ({ ...each, coil: { ...each.coil, correlations } });
  return { ...data, modules: data.modules.map(branch), units: data.units.map(branch) };
}
