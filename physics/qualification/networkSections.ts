/** The two sections of machines whose indoor units share one circuit. */
import type { Finding } from './finding';
import { networkBalances } from './networkBalances';
import { chargeRule, halfAndHalf, networkBands, networkSlopes } from './networkBands';
import { networkDirections, rowsOf } from './networkDirections';
import { networkDraws } from './networkDraws';
import { networkGrowth, networkZero, unitKeys } from './networkGrowth';
import { crossedOrCrossed, rankings, shortOrHeld, turning, wholeMachine } from './networkLookalikes';
import { MULTI_R32, MULTI_R410A, type NetworkCase, RECOVERY } from './networkMachines';

const BOTH_WAYS: Readonly<Record<string, NetworkCase>> = {
  cooling: { mode: 'cooling' },
  heating: { mode: 'heating' },
  '30 % short': { mode: 'cooling', fixed: true, faults: { undercharge: 0.3 } },
  'a valve far open': { mode: 'cooling', faults: { 'metering-valve-stuck-opening@unit3': 0.7 } },
  'leaking inside': { mode: 'heating', fixed: true, faults: { 'compressor-leak-by': 0.25 } },
  'two rooms off': { mode: 'cooling', units: { unit2: 'off', unit5: 'off' } },
};

const AT_ONCE: Readonly<Record<string, NetworkCase>> = {
  'half and half': { mode: 'simultaneous' },
  'ports crossed': { mode: 'simultaneous', faults: { 'changeover-ports-crossed@unit3': 1 } },
  'mostly heating': {
    mode: 'simultaneous',
    outdoor: 2,
    units: { unit1: 'heating', unit3: 'heating', unit5: 'heating' },
  },
  'module shut': { mode: 'cooling', faults: { 'module-valve-shut': 1 } },
};

export function multiSplit(): readonly Finding[] {
  const section = 'multiSplit';
  return [
    ...[MULTI_R410A, MULTI_R32].flatMap((variant) => [
      ...networkBands(section, variant),
      chargeRule(section, variant),
      ...networkSlopes(section, variant),
      ...networkBalances(section, variant, BOTH_WAYS),
      ...networkZero(section, variant),
    ]),
    ...networkDirections(section, MULTI_R410A, rowsOf('both')),
    ...shortOrHeld(section),
    ...rankings(section, MULTI_R410A),
    ...networkGrowth(section, MULTI_R410A),
    ...unitKeys(section, MULTI_R410A),
    ...networkDraws(section, MULTI_R410A, 'cooling', 300, 11),
    ...networkDraws(section, MULTI_R410A, 'heating', 300, 12),
    ...networkDraws(section, MULTI_R32, 'cooling', 200, 13),
    ...networkDraws(section, MULTI_R32, 'heating', 200, 14),
  ];
}

export function heatRecovery(): readonly Finding[] {
  const section = 'heatRecovery';
  return [
    ...networkBands(section, RECOVERY),
    ...halfAndHalf(section),
    chargeRule(section, RECOVERY),
    ...networkSlopes(section, RECOVERY),
    ...networkBalances(section, RECOVERY, { ...BOTH_WAYS, ...AT_ONCE }),
    ...networkDirections(section, RECOVERY, rowsOf('both')),
    ...rankings(section, RECOVERY),
    ...wholeMachine(section),
    ...turning(section),
    ...crossedOrCrossed(section),
    ...networkGrowth(section, RECOVERY),
    ...networkZero(section, RECOVERY),
    ...unitKeys(section, RECOVERY),
    ...networkDraws(section, RECOVERY, 'cooling', 200, 21),
    ...networkDraws(section, RECOVERY, 'heating', 200, 22),
    ...networkDraws(section, RECOVERY, 'simultaneous', 120, 23),
  ];
}
