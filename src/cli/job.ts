/** One request to `run`: the same object whether it comes from options or from a line of a batch. */
import * as z from 'zod';
import { createMachine, plantDescription, steady } from '../../physics';
import { PhysicsError } from '../../physics/errors';
import type { Conditions, Controls, MachineSetup, Snapshot } from '../../physics/types';
import { gridIndex, gridTime } from '../attempt/trajectory';
import { RefusedInput } from './exit';

z.config({ jitless: true });

const kelvin = z.number().min(200).max(400);

export const jobSchema = z.strictObject({
  id: z.union([z.string().max(200), z.number()]).optional(),
  plant: z.string().max(64),
  refrigerant: z.string().max(64).optional(),
  outdoor: kelvin.optional(),
  indoor: kelvin.optional(),
  wetBulb: kelvin.optional(),
  mode: z.string().max(64).optional(),
  altitude: z.number().min(-430).max(4500).optional(),
  faults: z.record(z.string().max(120), z.number()).optional(),
  fixedSpeed: z.boolean().optional(),
  setPoint: kelvin.optional(),
  indoorFan: z.enum(['low', 'high']).optional(),
});
export type Job = z.infer<typeof jobSchema>;

export interface PreparedJob {
  readonly setup: MachineSetup;
  readonly controls: Partial<Controls>;
}

export interface JobError {
  readonly code: string;
  readonly message: string;
}

/** What is left out takes the plant's design point. Throws RefusedInput or PhysicsError. */
export function prepareJob(value: unknown): PreparedJob {
  const parsed = jobSchema.safeParse(value);
  if (!parsed.success) throw new RefusedInput(parsed.error.issues.map(issueText).join('; '));
  const job = parsed.data;
  const plant = plantDescription(job.plant);
  const modes: Readonly<Record<string, Conditions | undefined>> = plant.modes;
  const design = job.mode === undefined ? plant.designConditions : modes[job.mode];
  if (design === undefined) {
    throw new RefusedInput(`mode: found "${job.mode}", expected ${Object.keys(modes).join(' or ')} for ${plant.id}`);
  }
  const refrigerant = plant.refrigerants.find((each) => each === (job.refrigerant ?? plant.refrigerants[0]));
  if (!refrigerant) {
    throw new RefusedInput(
      `refrigerant: found "${job.refrigerant}", expected ${plant.refrigerants.join(' or ')}, for which ${plant.id} is made`,
    );
  }
  return {
    setup: {
      plant: plant.id,
      refrigerant,
      conditions: {
        outdoor: job.outdoor ?? design.outdoor,
        indoor: job.indoor ?? design.indoor,
        wetBulb: job.wetBulb ?? design.wetBulb,
        mode: design.mode,
        altitude: job.altitude ?? design.altitude,
      },
      faults: job.faults ?? {},
    },
    controls: {
      ...(job.fixedSpeed !== undefined && { fixedSpeed: job.fixedSpeed }),
      ...(job.setPoint !== undefined && { setPoint: job.setPoint }),
      ...(job.indoorFan !== undefined && { indoorFan: job.indoorFan }),
    },
  };
}

/** The steady answer in the shape that other programs rely on. */
export function steadyAnswer({ setup, controls }: PreparedJob) {
  const { plant, refrigerant, conditions, faults, probes, balance } = steady(setup, controls);
  return { plant, refrigerant, conditions, faults, probes, balance };
}

/**
 * The machine in time: a snapshot at 0 and then every `every` seconds, up to and with `duration`. Steps lie on the grid
 * that attempts use, so that the same machine shows the same digits here and on the bench.
 */
export function* transient(
  { setup, controls }: PreparedJob,
  from: 'settled' | 'standing',
  duration: number,
  every: number,
): Generator<Snapshot> {
  const machine = createMachine(setup);
  const held: Controls = { ...machine.defaultControls, ...controls };
  let state = machine.start(from, held);
  let index = 0;
  let still = false;
  for (let time = 0; ; time = Math.min(time + every, duration)) {
    while (!still && index < gridIndex(time)) {
      if (index > 0 && machine.settled(state)) still = true;
      else state = machine.step(state, held, gridTime(index + 1) - gridTime(index));
      index += 1;
    }
    yield { ...machine.snapshot(state), time };
    if (time >= duration) return;
  }
}

export function jobError(error: unknown): JobError | null {
  if (error instanceof RefusedInput) return { code: 'bad-input', message: error.message };
  if (error instanceof PhysicsError) return { code: error.code, message: error.message };
  return null;
}

function issueText(issue: z.core.$ZodIssue): string {
  const place = issue.path.length > 0 ? `${issue.path.map(String).join('.')}: ` : '';
  return `${place}${issue.message}`;
}
