/**
 * One machine, compiled once: steady states, time steps, snapshots. The only door of the physics besides the fluids.
 */

import { plantDescription } from './plants';
import { flowSnapshot } from './snapshot';
import { compile, designPoint, type Rig, RUNNING } from './solve/compile';
import { type Setting, type SteadySolution, solveSteady } from './solve/steady';
import type { ControllerState, Controls, MachineSetup, PlantDescription, Snapshot } from './types';

export class MachineCore {
  readonly plant: PlantDescription;
  readonly rig: Rig;
  readonly defaultControls: Controls = RUNNING;

  /** Throws PhysicsError `bad-input` naming what is wrong with the setup. */
  constructor(readonly setup: MachineSetup) {
    this.plant = plantDescription(setup.plant);
    this.rig = compile(setup);
  }

  /** How valve and speed are set under these controls. */
  setting(controls: Controls): Setting {
    const { control } = this.rig.data;
    const { stuckOpening } = this.rig.effective;
    const held = stuckOpening === stuckOpening ? stuckOpening : controls.valveHold;
    return {
      opening: control.metering === 'fixed' ? 1 : held,
      speed: control.variableSpeed && !controls.fixedSpeed ? null : 1,
    };
  }

  /** Solve the steady state; the rig's circuit is left at the solution. Throws PhysicsError naming why there is none. */
  solve(controls: Controls): SteadySolution {
    const { rig, setup } = this;
    const { indoor, wetBulb } = setup.conditions;
    rig.circuit.indoorAir.setWetBulb(indoor, wetBulb);
    rig.setAir(controls, indoor, rig.circuit.indoorAir.humidity);
    const setting = this.setting(controls);
    const design = designPoint(setup.plant, setup.refrigerant);
    const size = 3 + (setting.opening === null ? 1 : 0) + (setting.speed === null ? 1 : 0);
    return solveSteady(rig.circuit, rig.env, setting, size === design.x.length ? design.x : null, indoor);
  }

  steadySnapshot(controls: Controls): Snapshot {
    this.solve(controls);
    const freezing = Array.from(this.rig.circuit.evaporator.wall, (wall) => (wall < 273.15 ? 1 : 0));
    return flowSnapshot(this.rig, controls, 0, runningState(this.rig), freezing);
  }
}

/** What the controller would say of itself while it runs. */
export function runningState(rig: Rig): ControllerState {
  const { data, env, circuit } = rig;
  const { limits, control } = data;
  if (circuit.pDischarge > limits.highPressure) return 'stopped-on-high-pressure';
  if (circuit.pSuction < limits.lowPressure) return 'stopped-on-low-pressure';
  if (circuit.compressor.tDischarge > limits.dischargeTemp) return 'stopped-on-discharge-heat';
  if (!control.variableSpeed) return 'cooling';
  if (circuit.compressor.tDischarge > limits.slowDownTemp - 0.5 || circuit.pDischarge > limits.slowDownPressure - 1e4) {
    return 'slowed-by-discharge-heat';
  }
  return env.speed > control.maxSpeed - 1e-6 ? 'cooling-at-full-speed' : 'cooling';
}
