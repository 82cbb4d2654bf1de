/** Has it come to rest? Once for the sensor, once for the machine. */
import type { ProbeName, Snapshot } from '../../physics/types';
import { channelValue, kindOfChannel, linkQuantity } from './places';
import type { ChannelName, SettleWord } from './types';

/** The machine's movement is judged over this many seconds. */
export const MOVEMENT_SPAN = 60;

const RANK: readonly SettleWord[] = ['fresh', 'moving', 'nearly', 'settled'];

export function worse(a: SettleWord, b: SettleWord): SettleWord {
  return RANK[Math.min(RANK.indexOf(a), RANK.indexOf(b))]!;
}

/** From the time it has been on: half, one and a half and three time constants (61, 22 and 5 % still to go). */
export function sensorWord(elapsed: number, lag: number): SettleWord {
  if (elapsed < 0.5 * lag) return 'fresh';
  if (elapsed < 1.5 * lag) return 'moving';
  return elapsed < 3 * lag ? 'nearly' : 'settled';
}

/** Probes that tell whether the circuit as a whole still moves. */
const CIRCUIT: readonly ProbeName[] = [
  'suctionPressure',
  'dischargePressure',
  'suctionLineTemp',
  'liquidLineTemp',
  'dischargeLineTemp',
];
/** Channels that do not hang on the circuit: they are judged by themselves. */
const APART: readonly ChannelName[] = [
  'outdoorAirTemp',
  'condenserEnteringAirTemp',
  'outdoorEnteringAirTemp',
  'returnAirTemp',
  'returnAirWetBulb',
  'coilEnteringAirTemp',
  'thermostatAirTemp',
  'filterPressureDrop',
  'coilPressureDrop',
  'supplyDuctPressure',
  'supplyVoltage',
  'busVoltage',
  'compressorCapacitance',
  'fanCapacitance',
  'defrostHeaterResistance',
  'suctionSensorResistance',
  'coilSensorResistance',
  'valveCoilResistance',
  'sensor:outdoorAir',
  'sensor:returnAir',
];

/** Change over a minute that still counts as moving and as nearly still: K for temperatures, shares for the rest. */
const STILL = { temperature: { moving: 1, nearly: 0.3 }, share: { moving: 0.02, nearly: 0.005 } } as const;

/** Whether what this channel shows still moves with the machine. A look or touch is what it is at that moment. */
export function machineWord(before: Snapshot, now: Snapshot, channel: ChannelName): SettleWord {
  if (channel.startsWith('look:') || channel.startsWith('touch:')) return 'settled';
  const own = channelMovement(before, now, channel);
  if (APART.includes(kindOfChannel(channel))) return own;
  return CIRCUIT.reduce((word, probe) => worse(word, channelMovement(before, now, probe)), own);
}

function channelMovement(before: Snapshot, now: Snapshot, channel: ChannelName): SettleWord {
  const a = channelValue(before, channel);
  const b = channelValue(now, channel);
  const isTemperature = linkQuantity(channel) === 'temperature';
  const change = isTemperature ? Math.abs(b - a) : Math.abs(b - a) / Math.max(Math.abs(a), Math.abs(b), 1e-12);
  const limits = isTemperature ? STILL.temperature : STILL.share;
  if (change >= limits.moving) return 'moving';
  return change >= limits.nearly ? 'nearly' : 'settled';
}
