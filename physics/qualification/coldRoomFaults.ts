/**
 * What a cold room's own faults show, by the receiver's and the thermostatic valve's logic; directions common practice, no
 * source. A fault that shows nothing while the machine runs must show nothing at all.
 */
import { createMachine, familiesOf } from '../index';
import { type Finding, finding, statement } from './finding';
import { type Case, COLD_ROOMS, type Reading, setupOf, steadyReadings, type Variant, WITH_RECEIVER } from './machines';
import { first, machineOf, run } from './runs';
import { SOURCES } from './sources';

const ANY = Number.POSITIVE_INFINITY;

/** A reading less the healthy machine's lies within these bounds. */
type Change = readonly [Reading, number, number];

interface Row {
  readonly name: string;
  readonly change: Case;
  readonly moves: readonly Change[];
  /** the same where a receiver takes up what the cooler does not hold */
  readonly behindReceiver?: readonly Change[];
}

/** K, kPa, shares: twice what the instruments tell apart for a sign, the review's bounds for a zero. */
const UP = {
  SHout: 2.4,
  Te: 1,
  Tc: 1,
  SC: 2.4,
  Td: 1,
  drop: 1,
  rise: 1,
  kinkFall: 1.4,
  ps: 17.5,
  ice: 0.1,
  ohm: 3,
} as const;
const ZERO = { SHout: 1.5, Te: 0.5, Tc: 0.5, SC: 1.5, Td: 1, drop: 0.5, drierFall: 0.7, level: 0.15 } as const;
const up = (reading: keyof typeof UP): Change => [reading, UP[reading], ANY];
const down = (reading: keyof typeof UP): Change => [reading, -ANY, -UP[reading]];
const same = (reading: keyof typeof ZERO): Change => [reading, -ZERO[reading], ZERO[reading]];
const NOTHING: readonly Change[] = (['Te', 'SHout', 'Tc', 'SC', 'Td', 'drop'] as const).map(same);

const ROWS: readonly Row[] = [
  {
    name: 'solenoid hangs',
    change: { faults: { 'solenoid-stuck-closed': 0.8 } },
    moves: [down('Te'), up('SHout'), up('kinkFall'), same('drierFall'), ['glass', 0, 0.01], up('Td')],
  },
  { name: 'solenoid passes, running', change: { faults: { 'solenoid-stuck-open': 0.5 } }, moves: NOTHING },
  {
    name: 'spring too stiff',
    change: { faults: { 'metering-valve-superheat-set': 5 } },
    moves: [down('Te'), up('SHout'), up('Td'), same('drierFall')],
    behindReceiver: [same('SC')],
  },
  {
    name: 'spring too soft',
    change: { faults: { 'metering-valve-superheat-set': -4 } },
    moves: [down('SHout'), down('Td'), same('SC')],
  },
  {
    name: 'no defrost starts',
    change: { faults: { 'defrost-not-starting': 0.5 } },
    moves: [down('Te'), up('drop'), same('SHout'), same('SC'), up('ice'), ['ohm', -0.1, 0.1]],
  },
  {
    name: 'heater burnt',
    change: { faults: { 'defrost-heater-dead': 0.75 } },
    moves: [down('Te'), up('drop'), same('SHout'), up('ice'), up('ohm')],
  },
  { name: 'defrost ends late, running', change: { faults: { 'defrost-not-ending': 20 } }, moves: NOTHING },
  { name: 'fan switch, 32 °C', change: { faults: { 'fan-cycling-control-failed': 0.8 } }, moves: NOTHING },
  {
    name: 'fan switch, 0 °C',
    change: { outdoor: 0, faults: { 'fan-cycling-control-failed': 0.8 } },
    moves: [down('Tc'), down('Te'), up('SHout'), ['opening', 0.05, 1]],
  },
  {
    name: 'condenser dirty',
    change: { faults: { 'condenser-dirty': 0.5 } },
    moves: [up('Tc'), up('rise'), up('Td'), same('SHout'), same('level')],
  },
  {
    name: 'cooler fan slow',
    change: { faults: { 'evaporator-fan-slow': 0.45 } },
    moves: [down('Te'), up('drop'), same('SHout'), same('SC'), ['ice', -0.02, 0.02]],
  },
  {
    name: 'air in the circuit',
    change: { faults: { 'non-condensable': 0.08 } },
    moves: [up('Tc'), up('SC'), up('Td'), same('SHout')],
  },
  {
    name: 'compressor leaks',
    change: { faults: { 'compressor-leak-by': 0.22 } },
    moves: [up('Te'), up('Td'), same('SHout')],
  },
];

function rows(variant: Variant): Finding[] {
  return ROWS.flatMap(({ name, change, moves, behindReceiver = [] }) => {
    const healthy = steadyReadings(variant, { ...change, faults: {} });
    const ours = steadyReadings(variant, change);
    const all = WITH_RECEIVER.includes(variant) ? [...moves, ...behindReceiver] : moves;
    return all.map(([reading, low, high]) =>
      finding(
        `coldRoom/${variant.id}/fault ${name}/${reading}`,
        SOURCES.field,
        `change of ${reading}`,
        '',
        ours[reading] - healthy[reading],
        low,
        high,
      ),
    );
  });
}

/** What only a test by action shows: the thermostat is turned up, and the machine should empty its low side. */
function emptying(variant: Variant): Finding[] {
  const stopsWith = (faults: Case['faults']): number => {
    const { machine, on } = machineOf(variant, { faults });
    const { moments } = run(machine, machine.start('settled', on), { ...on, setPoint: 283.15 }, 300);
    return first(moments, ({ controller }) => controller === 'room-satisfied');
  };
  const starts = (faults: Case['faults']): number => {
    const { machine, on } = machineOf(variant, { faults });
    const { moments } = run(machine, machine.start('settled', on), { ...on, setPoint: 283.15 }, 900);
    return moments.filter(
      ({ controller }, i) => i > 0 && controller === 'pumping-down' && moments[i - 1].controller !== controller,
    ).length;
  };
  const id = `coldRoom/${variant.id}/empties`;
  return [
    finding(`${id}/sound`, SOURCES.review, 'low side emptied after', 's', stopsWith({}), 20, 60),
    statement(
      `${id}/solenoid passes`,
      SOURCES.field,
      'with a passing solenoid never',
      Number.isNaN(stopsWith({ 'solenoid-stuck-open': 0.5 })),
    ),
    finding(
      `${id}/solenoid weeps`,
      SOURCES.field,
      'with a weeping one it starts again and again',
      '-',
      starts({ 'solenoid-stuck-open': 0.04 }),
      3,
      40,
    ),
    finding(
      `${id}/compressor leaks`,
      SOURCES.field,
      'with a leaking compressor too',
      '-',
      starts({ 'compressor-leak-by': 0.22 }),
      2,
      40,
    ),
  ];
}

/** Every family at severity zero is the healthy machine to the last bit, steady and in time. */
function zero(variant: Variant): Finding[] {
  const sound = createMachine(setupOf(variant));
  const steady = JSON.stringify(sound.steady());
  const later = JSON.stringify(sound.step(sound.start('standing'), sound.defaultControls, 30));
  return familiesOf(variant.plant, undefined, variant.refrigerant).map((family) => {
    const machine = createMachine(setupOf(variant, { faults: { [family.id]: 0 } }));
    const equal =
      JSON.stringify(machine.steady()) === steady &&
      JSON.stringify(machine.step(machine.start('standing'), machine.defaultControls, 30)) === later;
    return statement(
      `coldRoom/${variant.id}/zero/${family.id}`,
      SOURCES.model,
      'severity 0 is the healthy machine',
      equal,
    );
  });
}

export function coldRoomFaults(): readonly Finding[] {
  return COLD_ROOMS.flatMap((variant) => [...rows(variant), ...emptying(variant), ...zero(variant)]);
}
