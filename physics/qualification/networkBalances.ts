/**
 * First and second law of machines with many units, from what their snapshots show: heats and powers add up; no branch
 * lets entropy vanish; a wall's temperature lies between its air's and its refrigerant's; flows add up where pipes meet.
 */

import { fluidTable } from '../fluids/fluid';
import * as L from '../fluids/layout';
import type { BranchSnapshot, Snapshot, Station } from '../types';
import { type Finding, finding, statement } from './finding';
import { type NetworkCase, type NetworkVariant, networkShot } from './networkMachines';
import { SOURCES } from './sources';

const block = new Float64Array(L.BLOCK_SIZE);
const out = new Float64Array(L.OUT_SIZE);

/** J/(kg K) */
function entropy(refrigerant: NetworkVariant['refrigerant'], { pressure, enthalpy }: Station): number {
  const fluid = fluidTable(refrigerant);
  fluid.setPressure(pressure, block);
  fluid.state(block, enthalpy, out);
  return out[L.OUT_S];
}

/** W/K that one indoor coil makes: what its refrigerant gains less what its air loses at the air's mean temperature. */
function made(variant: NetworkVariant, { probes }: Snapshot, unit: BranchSnapshot): number {
  const { gas, liquid, role, id } = unit;
  const load = probes[`capacityTotal@${id}`].value;
  const air = 0.5 * (probes[`returnAirTemp@${id}`].value + probes[`supplyAirTemp@${id}`].value);
  const change = entropy(variant.refrigerant, gas) - entropy(variant.refrigerant, liquid);
  return role === 'evaporator' ? gas.massFlow * change - load / air : load / air - gas.massFlow * change;
}

/** K by which a wall lies outside what its air and the refrigerant along it span. */
function outside({ coil, role, gas, liquid }: BranchSnapshot, air: number): number {
  if (role === 'idle') return 0;
  let before = role === 'evaporator' ? liquid.temperature : gas.temperature;
  let most = 0;
  for (const { temperature, wall } of coil) {
    const low = Math.min(before, temperature, air);
    const high = Math.max(before, temperature, air);
    most = Math.max(most, low - wall, wall - high);
    before = temperature;
  }
  return most;
}

export function networkBalances(
  section: string,
  variant: NetworkVariant,
  cases: Readonly<Record<string, NetworkCase>>,
): Finding[] {
  return Object.entries(cases).flatMap(([name, change]) => {
    const snapshot = networkShot(variant, change);
    const { probes, stations, units = [], modules = [], balance } = snapshot;
    const id = `${section}/${variant.id}/laws/${name}`;
    const own = SOURCES.own;
    const working = units.filter(({ role }) => role !== 'idle');
    const boiling = [...units, ...modules].filter(({ role }) => role === 'evaporator');
    const s = (station: Station): number => entropy(variant.refrigerant, station);
    const flow = boiling.reduce((sum, { gas }) => sum + gas.massFlow, 0);
    const mixed = boiling.reduce((sum, { gas }) => sum + gas.massFlow * s(gas), 0) / flow;
    return [
      finding(
        `${id}/first law`,
        own,
        'heat and power that miss each other over capacity',
        '-',
        balance.energy,
        0,
        1e-3,
      ),
      finding(`${id}/charge`, own, 'departure from the charge', 'kg', balance.mass, 0, 1e-9),
      finding(
        `${id}/indoor coils`,
        own,
        'least entropy that an indoor coil makes',
        'W/K',
        Math.min(...working.map((unit) => made(variant, snapshot, unit))),
        0,
        Number.POSITIVE_INFINITY,
      ),
      finding(
        `${id}/compressors`,
        own,
        'entropy that the compressors add',
        'J/(kg K)',
        s(stations['compressor-out']) - s(stations['compressor-in']),
        0,
        Number.POSITIVE_INFINITY,
      ),
      finding(
        `${id}/where suction meets`,
        own,
        'entropy that mixing and pipes add',
        'J/(kg K)',
        s(stations['evaporator-out']) - mixed,
        -1e-6,
        Number.POSITIVE_INFINITY,
      ),
      finding(
        `${id}/valves`,
        own,
        'least entropy that a valve before a boiling coil adds',
        'J/(kg K)',
        Math.min(...boiling.map(({ liquid }) => s(liquid) - s(stations['metering-in']))),
        -1e-9,
        Number.POSITIVE_INFINITY,
      ),
      finding(
        `${id}/walls`,
        own,
        'wall outside what its air and refrigerant span',
        'K',
        Math.max(
          ...units.map((unit) => outside(unit, probes[`returnAirTemp@${unit.id}`].value)),
          ...modules.map((module) => outside(module, probes[`condenserEnteringAirTemp@${module.id}`].value)),
        ),
        0,
        0.05,
      ),
      finding(
        `${id}/flows`,
        own,
        'boiling flows over what the valves pass, less 1',
        '-',
        flow / stations['metering-in'].massFlow - 1,
        -1e-6,
        1e-6,
      ),
      statement(
        `${id}/signs`,
        own,
        'who boils takes heat from its air, who condenses gives it',
        working.every(
          ({ role, id: unit }) =>
            probes[`returnAirTemp@${unit}`].value - probes[`supplyAirTemp@${unit}`].value > 0 ===
            (role === 'evaporator'),
        ),
      ),
    ];
  });
}
