/** What faults and nuisance make of a network: one `Effective` for the machine and its outdoor modules, one a unit. */
import { parseFaults } from '../faults';
import { type DesignPoint, type Effective, healthy, type Nominal } from '../solve/effective';
import type { MachineSetup, Nuisance } from '../types';
import type { NetworkData } from './data';
import type { NetworkEffective } from './rig';

/** The healthy machine at its design point, and what each unit's valve does there. */
export interface NetworkDesign {
  readonly point: DesignPoint;
  readonly openings: readonly number[];
}

export function healthyNetwork(data: NetworkData): NetworkEffective {
  const effective = (): Effective => healthy(nominal(data, false));
  return { machine: effective(), units: data.units.map(effective) };
}

/** Throws PhysicsError `bad-input` for a fault that this plant cannot have. */
export function faultyNetwork(
  data: NetworkData,
  setup: MachineSetup,
  nuisance: Nuisance,
  design: NetworkDesign,
): NetworkEffective {
  const { machine, units } = healthyNetwork(data);
  machine.charge *= nuisance.charge;
  machine.condenserAir *= nuisance.condenserAir;
  machine.condenserUa *= nuisance.condenserUa;
  machine.displacement *= nuisance.displacement;
  machine.voltage *= nuisance.voltage;
  for (const unit of units) {
    unit.evaporatorAir *= nuisance.evaporatorAir;
    unit.evaporatorUa *= nuisance.evaporatorUa;
    unit.metering *= nuisance.meteringArea;
  }
  const own = nominal(data, setup.conditions.mode === 'heating');
  for (const { fault, target, unit, severity } of parseFaults(setup.plant, setup.faults)) {
    if (!fault.perUnit) {
      fault.apply(machine, severity, design.point, own, target);
      continue;
    }
    data.units.forEach(({ id }, i) => {
      if (unit !== null && unit !== id) return;
      fault.apply(units[i], severity, { ...design.point, opening: design.openings[i] }, own, target);
    });
    if (unit === null && fault.targets) fault.apply(machine, severity, design.point, own, target);
  }
  return { machine, units };
}

/** @param heats ice lies on the outdoor coils of a machine that heats */
function nominal({ charge, pipes, motor, modules }: NetworkData, heats: boolean): Nominal {
  const liquid = { drier: pipes.drier, line: pipes.liquidDrop };
  const [{ fan, ice }] = modules;
  return {
    charge,
    liquid,
    lines: { inletDrop: pipes.inletDrop },
    motor,
    ...(heats && { outdoorFan: fan, outdoorIce: ice }),
  };
}
