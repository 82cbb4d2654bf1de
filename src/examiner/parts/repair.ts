/**
 * Repair: how it was verified (4 of 20), what came out (6), workmanship (7), why it happened (3). All but the method
 * of verification count only as far as the readings supported the verdict: a lucky remedy is no repair. A band-aid
 * brings nothing, and the van comes back.
 */
import type { Snapshot } from '../../../physics/types';
import type { AttemptState, Note, Repair, Verification } from '../../attempt';
import { machineNuisance } from '../../attempt/seeds';
import { biasSd, noiseSd } from '../../instruments/errors';
import { channelValue } from '../../instruments/places';
import { channelIndex, channelSd } from '../belief';
import type { Case } from '../case';
import { sourceOf } from '../source';
import type { Message } from '../types';
import { clip, type Marked } from './part';

const PARTS = { method: 4, result: 6, procedure: 7, root: 3 } as const;
const WHOLE = PARTS.method + PARTS.result + PARTS.procedure + PARTS.root;
/** A settled machine before the proof, s. */
const SETTLED_FOR = 900;
const NAMED = 3;
/** Readings this many standard deviations from the healthy middle are in band. */
const IN_BAND = 2;
/** Good workmanship on the wrong remedy. */
const TIDY_BUT_WRONG = 0.5;

/** `support`: of the verdict, with what was read to prove it before the repair. */
export function markRepair(one: Case, support: number): Marked {
  const { state } = one;
  const repair = state.repairs.at(-1);
  if (!repair) return { share: 0, reasons: [{ key: 'reason.repair.none', values: {} }] };
  const method = markMethod(state.verification);
  const fits = repair.fits && repair.callBack === null;
  const wrongBefore = state.repairs.slice(0, -1).filter((each) => !each.fits).length;
  let halved = 1;
  for (let i = 0; i < wrongBefore; i++) halved /= 2;
  const proved = fits ? shareInBand(one) : 0;
  const points =
    PARTS.method * method +
    support *
      (PARTS.result * proved * halved +
        PARTS.procedure * repair.procedure.share * (fits ? 1 : TIDY_BUT_WRONG) +
        PARTS.root * (repair.rootRight && repair.root !== null ? 1 : 0));
  return { share: clip(points / WHOLE), reasons: reasonsOf(repair, fits, method, proved) };
}

function reasonsOf(repair: Repair, fits: boolean, method: number, proved: number): Message[] {
  const remedy = { kind: 'remedy', id: repair.remedy } as const;
  const reasons: Message[] = [];
  if (fits) reasons.push({ key: 'reason.repair.fits', values: { remedy } });
  else reasons.push({ key: `reason.repair.${repair.callBack ?? 'cause-left'}`, values: { remedy } });
  const { missing, outOfOrder } = repair.procedure;
  if (missing.length > 0) {
    reasons.push({
      key: 'reason.repair.stepMissing',
      values: { step: { kind: 'step', id: missing[0] } },
    });
  } else if (outOfOrder.length > 0) {
    reasons.push({ key: 'reason.repair.stepOrder', values: { step: { kind: 'step', id: outOfOrder[0] } } });
  } else reasons.push({ key: 'reason.repair.steps', values: {} });
  reasons.push({
    key: repair.rootRight && repair.root !== null ? 'reason.repair.root' : 'reason.repair.rootWrong',
    values: {},
  });
  if (method < 1) reasons.push({ key: 'reason.repair.method', values: {} });
  else reasons.push({ key: proved === 1 ? 'reason.repair.proved' : 'reason.repair.outOfBand', values: {} });
  return reasons;
}

/** Named readings after the repair, enough of them, settled, and the machine run in. */
function markMethod(verification: Verification | null): number {
  if (!verification || verification.notes.length === 0) return 0;
  const { after, settled, ran, notes } = verification;
  const met = [after, settled, ran >= SETTLED_FOR, notes.length >= NAMED];
  return met.filter(Boolean).length / met.length;
}

/** Share of the named readings (three at least) that the machine, mended, would show in the room of that moment. */
function shareInBand(one: Case): number {
  const { verification, notes } = one.state;
  if (!verification?.after) return 0;
  const inBand = verification.notes.filter((number) => notes[number] && isInBand(one, notes[number]));
  return inBand.length / Math.max(NAMED, verification.notes.length);
}

function isInBand({ state, differential }: Case, note: Note): boolean {
  const c = channelIndex(differential).get(note.channel);
  const healthy = differential.nodes.find(({ cause }) => cause === 'no-fault')?.states.running?.[0];
  const expected = healthySnapshot(state, note.time);
  if (note.struck || c === undefined || !healthy || !expected) return false;
  const value = note.gauge ? note.value + state.site.atmosphere : note.value;
  const sd = channelSd(healthy, c, differential);
  const off = Math.abs(value - channelValue(expected, note.channel));
  return off <= IN_BAND * Math.sqrt(sd * sd + errorVariance(note, value));
}

/** The callout's machine without faults, settled in the weather and the room of that second; null where it trips. */
function healthySnapshot({ site, events }: AttemptState, time: number): Snapshot | null {
  const { plant, refrigerant, conditions, machineSeed } = site.callout;
  const { returnAirTemp, returnAirWetBulb } = site.snapshot(events, time).probes;
  const then = { ...conditions, indoor: returnAirTemp.value, wetBulb: returnAirWetBulb.value };
  const nuisance = machineNuisance(machineSeed);
  const source = sourceOf(site.world);
  return source.snapshots({ plant, refrigerant, conditions: then, faults: {}, nuisance }, ['running']).running ?? null;
}

function errorVariance({ instrument, quantity }: Note, value: number): number {
  const noise = noiseSd(instrument, quantity, value);
  const bias = biasSd(instrument, quantity, value);
  return noise * noise + bias * bias;
}
