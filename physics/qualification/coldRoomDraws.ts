/** Cold rooms drawn at random: do they solve, and do their books close? */
import { createMachine, familiesOf, type MachineSetup, PhysicsError } from '../index';
import { misuse } from './abuse';
import { Draw, severityAt } from './draws';
import { type Finding, finding } from './finding';
import { COLD_ROOM, COLD_ROOMS } from './machines';
import { SOURCES } from './sources';

const { plant } = COLD_ROOM;

/** Any refrigerant that it is built for, 0…46 °C outdoors, a room from −2 °C to one that is still warm, one fault. */
function drawn(draw: Draw): MachineSetup {
  const { refrigerant } = draw.pick(COLD_ROOMS);
  const family = draw.pick(familiesOf(plant, undefined, refrigerant));
  const indoor = 273.15 + draw.between(-2, 18);
  const conditions = {
    outdoor: 273.15 + draw.between(0, 46),
    indoor,
    wetBulb: indoor - draw.between(0.4, 4),
    mode: 'cooling',
    altitude: draw.between(0, 1500),
  } as const;
  const sign = family.signed && draw.share() < 0.5 ? -1 : 1;
  return { plant, refrigerant, conditions, faults: { [family.id]: sign * severityAt(family, draw.share()) } };
}

/** An hour each in which everything that can be set is set at random, all the time. */
export function coldRoomMisuse(count: number, seed: number): Finding[] {
  const runs = Array.from({ length: count }, (_, i) => {
    const draw = new Draw(seed + i);
    return misuse(createMachine(drawn(draw)), {}, draw, [-3, 12]);
  });
  const mass = runs.reduce((most, run) => (run.mass > most || Number.isNaN(run.mass) ? run.mass : most), 0);
  const id = 'coldRoom/cold-room/misuse';
  return [
    finding(`${id}/charge`, SOURCES.own, 'worst departure from the charge', 'kg', mass, 0, 1e-6),
    finding(
      `${id}/given up`,
      SOURCES.model,
      'runs that end in an error',
      '-',
      runs.filter(({ error }) => error).length,
      0,
      0,
    ),
    finding(
      `${id}/switches`,
      SOURCES.model,
      'stops by a switch',
      '-',
      runs.reduce((sum, { trips }) => sum + trips, 0),
      10,
      1e9,
    ),
  ];
}

export function coldRoomDraws(count: number, seed: number): Finding[] {
  const draw = new Draw(seed);
  let solved = 0;
  let energy = 0;
  let mass = 0;
  let unnamed = 0;
  for (let k = 0; k < count; k++) {
    try {
      const { balance } = createMachine(drawn(draw)).steady();
      solved++;
      energy = Math.max(energy, balance.energy);
      mass = Math.max(mass, balance.mass);
    } catch (error) {
      if (!(error instanceof PhysicsError)) throw error;
      if (error.code === 'no-convergence') unnamed++;
    }
  }
  const id = 'coldRoom/cold-room/random';
  return [
    finding(`${id}/solved`, SOURCES.model, 'share that solves', '-', solved / count, 0.995, 1),
    finding(`${id}/energy`, SOURCES.own, 'worst first-law defect over capacity', '-', energy, 0, 1e-3),
    finding(`${id}/charge`, SOURCES.own, 'worst departure from the charge', 'kg', mass, 0, 1e-9),
    finding(`${id}/unnamed`, SOURCES.model, 'unsolved without a reason', '-', unnamed, 0, 0),
  ];
}
