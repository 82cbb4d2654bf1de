/** Carrying out a remedy: the machine is held meanwhile, is another afterwards, and starts again. */
import { castDraft, type Draft } from 'immer';
import type { FamilyId, Faults } from '../../physics/types';
import { hazardsOfRepair, newlyMet } from './hazards';
import { ensure } from './refusal';
import {
  applyRemedy,
  callBackAfter,
  familyOf,
  isSound,
  markProcedure,
  REMEDY_RULES,
  repairSeconds,
  rootFits,
  STEP_SECONDS,
} from './remedies';
import type { AttemptState, Repair } from './state';
import type { MachineEvent } from './trajectory';
import type { Action } from './types';

export type RepairAction = Extract<Action, { kind: 'repair' }>;

export function carryOut(state: AttemptState, draft: Draft<AttemptState>, action: RepairAction): void {
  const { remedy, steps, root } = action;
  const { site, clock: from } = state;
  ensure(state.verdicts.length > 0, 'no-verdict', remedy);
  ensure(new Set(steps).size === steps.length, 'step-twice', steps.join(', '));

  const rule = REMEDY_RULES[remedy];
  const before = state.faults;
  const after = applyRemedy(before, remedy, steps, site.world.families);
  const remedies = [...state.repairs.map((each) => each.remedy), remedy];
  const callBack = callBackAfter(site.callout.faults, after, remedies);
  const wasSound = isSound(before);
  const to = from + repairSeconds(remedy, steps);
  const done: Repair = {
    remedy,
    steps,
    root,
    action: state.attempt.actions.length,
    from,
    to,
    before,
    after,
    mended: familiesLost(before, after),
    caused: familiesLost(after, before),
    fits: callBack === null && wasSound === (remedy === 'nothing-to-mend'),
    rootRight: rootFits(root, site.callout.rootCause),
    callBack,
    procedure: markProcedure(remedy, steps),
  };

  const electric = rule.steps.includes('discharge-capacitor');
  const met = newlyMet(state, hazardsOfRepair(rule.opensCircuit, electric, site.flammable));
  draft.hazards.push(...castDraft(met));
  draft.repairs.push(castDraft(done));
  if (remedy !== 'nothing-to-mend') {
    const settling = steps.includes('restart-and-settle') ? STEP_SECONDS['restart-and-settle'] : 0;
    draft.events.push(...castDraft(standAndRestart(state, after, to - settling)));
    draft.controls = { ...site.machine.defaultControls };
    draft.faults = { ...after };
    draft.epoch += 1;
  }
  // Everything is taken off for the work and has to be put on again.
  draft.connections = {};
  draft.clock = to;
  draft.undo = [];
}

/** Held from now; another machine and on again with its own controls at `restart`. */
function standAndRestart(state: AttemptState, faults: Faults, restart: number): MachineEvent[] {
  const controls = state.site.machine.defaultControls;
  return [
    { t: state.clock, kind: 'held' },
    { t: restart, kind: 'faults', faults },
    { t: restart, kind: 'controls', controls },
  ];
}

/** Families that `a` has and `b` has not. */
function familiesLost(a: Faults, b: Faults): FamilyId[] {
  const has = (faults: Faults, family: FamilyId) =>
    Object.entries(faults).some(([key, severity]) => severity !== 0 && familyOf(key) === family);
  return [...new Set(Object.keys(a).map(familyOf))].filter((family) => has(a, family) && !has(b, family));
}
