/**
 * Steady states of many units beside one of a single split, each from a neighbouring weather. Targets on an idle core: eight
 * units in 0.8 ms, two in 0.3 ms; they march nine and three coils some twenty times, a split marches two.
 */
import { bench, describe } from 'vitest';
import { fluidTable } from '../../physics/fluids/fluid';
import { createMachine } from '../../physics/index';
import { healthyNetwork } from '../../physics/network/faulty';
import { NetworkRig } from '../../physics/network/rig';
import { solveNetwork } from '../../physics/network/steady';
import { MULTI_SPLIT } from '../../physics/plants/multiSplit';
import { multiSplitMachine } from '../../physics/plants/multiSplit/machine';
import type { Conditions } from '../../physics/types';

const COOLING = MULTI_SPLIT.designConditions;
const NEXT: Conditions = { ...COOLING, outdoor: COOLING.outdoor + 0.5 };

/** Solves the same network in two weathers in turn, each time from the other's solution. */
function pair(count: number): () => void {
  const data = multiSplitMachine('R-410A', count);
  const setting = {
    speed: null,
    exchange: 1,
    outdoors: { role: 'condenser', count: 1 },
    demands: data.units.map(() => 'cooling' as const),
    valveHold: null,
  } as const;
  const rigs = [COOLING, NEXT].map((conditions) => {
    const rig = new NetworkRig(fluidTable('R-410A'), data, healthyNetwork(data), conditions);
    const room = rig.roomFound();
    for (let i = 0; i < data.units.length; i++) rig.setUnitAir(i, room, false, true);
    rig.setOutdoorAir(1, true);
    return { rig, x: solveNetwork(rig, setting, null).x };
  });
  let turn = 0;
  return () => {
    const { rig } = rigs[turn];
    turn = 1 - turn;
    solveNetwork(rig, setting, rigs[turn].x);
  };
}

describe('steady states, warm', () => {
  const splits = [COOLING, NEXT].map((conditions) =>
    createMachine({ plant: 'inverter-split', refrigerant: 'R-32', conditions, faults: {} }),
  );
  let turn = 0;
  bench('one split', () => {
    turn = 1 - turn;
    splits[turn].steady();
  });
  for (const count of [2, 4, 8]) bench(`${count} units`, pair(count));
});
