/**
 * Qualification of the machines: every test with its source, the reference, our figure and whether it holds. The test suite
 * fails where one does not hold and is not on the list of reasoned misses.
 */
import { abused } from './abuse';
import { coldRoom } from './coldRoom';
import { coldRoomDefrosts } from './coldRoomDefrost';
import { coldRoomDraws, coldRoomMisuse } from './coldRoomDraws';
import { coldRoomFaults } from './coldRoomFaults';
import { coldRoomGrowth } from './coldRoomGrowth';
import { coldRoomTimes } from './coldRoomTimes';
import { directions } from './directions';
import { randomMachines } from './draws';
import { envelopes } from './envelopes';
import type { Finding } from './finding';
import { growth, zeroSeverity } from './growth';
import { healthyBands, nameplateCharge } from './healthy';
import { heatPump } from './heatPump';
import { heatPumpDirections } from './heatPumpDirections';
import { heatPumpDraws, heatPumpGrowth } from './heatPumpDraws';
import { heatPumpLookalikes } from './heatPumpLookalikes';
import { heatPumpTimes } from './heatPumpTimes';
import { leakOrLightLoad, lookalikes, mildRestriction } from './lookalikes';
import { heatRecovery, multiSplit } from './networkSections';
import { networkTime } from './networkTime';
import { faultPairs, knownPairs } from './pairs';
import { slopes } from './slopes';
import { timing } from './timing';

export { type Count, count, plantOf, type Verdict, verdictOf } from './account';
export type { Finding } from './finding';
export { VARIANTS } from './machines';
export { listedMisses, reasonFor } from './misses';
export { figure, reportTable } from './report';
export { type Corner, type CornerName, jumps, type Sweep, type SweepPoint, sweeps } from './sweeps';
export { hasSpeeds, type Numbers, SWEPT, type Swept } from './swept';

/** In the order of a report; each is independent and deterministic. */
export const SECTIONS: Readonly<Record<string, () => readonly Finding[]>> = {
  healthy: () => [...healthyBands(), ...nameplateCharge()],
  slopes,
  directions,
  envelopes,
  lookalikes: () => [...lookalikes(), ...leakOrLightLoad(), ...mildRestriction()],
  growth: () => [...zeroSeverity(), ...growth()],
  time: timing,
  random: () => randomMachines(1000, 7),
  abuse: () => abused(60, 1000),
  coldRoom: () => [...coldRoom(), ...coldRoomFaults(), ...coldRoomGrowth(), ...coldRoomDraws(1000, 11)],
  coldRoomTime: () => [...coldRoomTimes(), ...coldRoomDefrosts(), ...coldRoomMisuse(8, 500)],
  multiSplit,
  heatRecovery,
  networkTime,
  heatPump: () => [
    ...heatPump(),
    ...heatPumpDirections(),
    ...heatPumpLookalikes(),
    ...heatPumpTimes(),
    ...heatPumpGrowth(),
    ...heatPumpDraws(300, 17),
  ],
  pairs: () => [...faultPairs(), ...knownPairs()],
};
