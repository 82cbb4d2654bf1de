/** What happens to a cold room as each of its faults grows. Where the corners lie: judged (common practice, no source). */
import type { Finding } from './finding';
import { oneGrowth } from './growth';
import { type Growth, gasInGlass, superheatGone, valveOpen } from './growthTable';
import { COLD_ROOM_R290, COLD_ROOMS, WITH_RECEIVER } from './machines';

const machines = COLD_ROOMS;

const GROWTHS: readonly Growth[] = [
  {
    key: 'undercharge',
    machines: WITH_RECEIVER,
    telling: 'level',
    sign: -1,
    corners: [
      { name: 'receiver empty', there: (r) => r.level < 0.02, from: 0.12, to: 0.32 },
      gasInGlass(0.18, 0.4),
      valveOpen(0.25, 0.56),
    ],
    to: 0.56,
  },
  {
    key: 'undercharge',
    machines: [COLD_ROOM_R290],
    telling: 'SC',
    sign: -1,
    corners: [gasInGlass(0.08, 0.3), valveOpen(0.15, 0.5)],
  },
  { key: 'overcharge', machines: [COLD_ROOM_R290], telling: 'SC', sign: 1, corners: [] },
  {
    key: 'overcharge',
    machines: WITH_RECEIVER,
    telling: 'SC',
    sign: 1,
    corners: [{ name: 'receiver full', there: (r) => r.level > 0.97, from: 0.1, to: 0.35 }],
  },
  { key: 'non-condensable', machines, telling: 'standing', sign: 1, corners: [] },
  { key: 'non-condensable', machines, telling: 'SC', sign: 1, corners: [] },
  {
    key: 'drier-restriction',
    machines,
    telling: 'drierDrop',
    sign: 1,
    corners: [gasInGlass(0.02, 0.4), valveOpen(0.02, 0.5)],
  },
  { key: 'condenser-dirty', machines, telling: 'Tc', sign: 1, corners: [] },
  { key: 'condenser-fan-slow', machines, telling: 'rise', sign: 1, corners: [] },
  { key: 'evaporator-fan-slow', machines, telling: 'drop', sign: 1, corners: [] },
  { key: 'compressor-leak-by', machines, telling: 'effort', sign: 1, corners: [] },
  { key: 'metering-valve-stuck-closing', machines, telling: 'SH', sign: 1, corners: [] },
  { key: 'bulb-charge-lost', machines, telling: 'opening', sign: -1, corners: [], from: 0.25 },
  {
    key: 'bulb-loose',
    machines,
    telling: 'SH',
    sign: -1,
    corners: [superheatGone(0.6, 0.95)],
    to: 0.9,
    jumps: 'the last kelvins of superheat go within 2 % of opening, as with a valve stuck a little too far open',
  },
  { key: 'metering-valve-superheat-set', machines, telling: 'SH', sign: 1, corners: [] },
  {
    key: 'solenoid-stuck-closed',
    machines,
    telling: 'kinkFall',
    sign: 1,
    corners: [valveOpen(0.5, 0.8)],
    // less is never felt; beyond, a hundredth of its area is a tenth of the flow
    from: 0.3,
    to: 0.84,
  },
  { key: 'defrost-not-starting', machines, telling: 'ice', sign: 1, corners: [] },
  { key: 'defrost-not-starting', machines, telling: 'drop', sign: 1, corners: [] },
  {
    key: 'defrost-heater-dead',
    machines,
    telling: 'ohm',
    sign: 1,
    corners: [{ name: 'ice stays', there: (r) => r.ice > 0.05, from: 0.45, to: 0.65 }],
    to: 0.9,
  },
  { key: 'capacitor-weak', machines, telling: 'current', sign: 1, corners: [] },
];

export function coldRoomGrowth(): readonly Finding[] {
  return GROWTHS.flatMap((one) => one.machines.flatMap((variant) => oneGrowth(one, variant)));
}
