/** What is done, in which order, and why it had come to that. */
import { useState } from 'preact/hooks';
import { PROCEDURE_STEPS, type ProcedureStep, ROOT_CAUSES, remediesOn } from '../../attempt';
import { useText } from '../kit/text';
import { type Drafts, useSession } from '../session';

const LEAVES = ['remedy', 'steps', 'root'] as const;

export function RepairForm() {
  const text = useText();
  const session = useSession();
  const [leaf, setLeaf] = useState(0);
  const draft = session.drafts.value.repair;
  const edit = (change: Partial<Drafts['repair']>) => {
    session.drafts.value = { ...session.drafts.value, repair: { ...draft, ...change } };
  };
  const commit = () => {
    if (!draft.remedy) return;
    const { remedy, steps, root } = draft;
    if (session.dispatch({ kind: 'repair', remedy, steps, root: root ?? null })) {
      session.drafts.value = { ...session.drafts.value, repair: { steps: [] }, proof: [] };
    }
  };
  const which = LEAVES[leaf]!;
  return (
    <div class="stack">
      <p class="caution">{text.t('finish.repair.lawful')}</p>
      <fieldset class="slot">
        <legend>{text.t(`finish.repair.${which}`)}</legend>
        {which === 'remedy' &&
          remediesOn(session.callout.plant, session.state.value.site.world.families).map((remedy) => (
            <Choice
              key={remedy}
              group="remedy"
              chosen={draft.remedy === remedy}
              choose={() => edit({ remedy })}
              name={text.t(`names.remedy.${remedy}`)}
            />
          ))}
        {which === 'steps' && <Steps steps={draft.steps} set={(steps) => edit({ steps })} />}
        {which === 'root' && (
          <>
            {ROOT_CAUSES.map((root) => (
              <Choice
                key={root}
                group="root"
                chosen={draft.root === root}
                choose={() => edit({ root })}
                name={text.t(`names.root.${root}`)}
              />
            ))}
            <Choice
              group="root"
              chosen={draft.root === undefined}
              choose={() => edit({ root: undefined })}
              name={text.t('finish.repair.rootNone')}
            />
          </>
        )}
      </fieldset>
      <div class="wrap">
        {leaf > 0 && (
          <button type="button" onClick={() => setLeaf(leaf - 1)}>
            {text.t('finish.repair.back')}
          </button>
        )}
        {leaf < LEAVES.length - 1 ? (
          <button type="button" class="main" disabled={!draft.remedy} onClick={() => setLeaf(leaf + 1)}>
            {text.t('finish.repair.next')}
          </button>
        ) : (
          <button type="button" class="main" onClick={commit}>
            {text.t('finish.repair.commit')}
          </button>
        )}
      </div>
    </div>
  );
}

function Choice(props: {
  readonly group: string;
  readonly name: string;
  readonly chosen: boolean;
  readonly choose: () => void;
}) {
  return (
    <label class="choice">
      <input type="radio" name={props.group} checked={props.chosen} onChange={props.choose} />
      <span class="first">{props.name}</span>
    </label>
  );
}

function Steps({
  steps,
  set,
}: {
  readonly steps: readonly ProcedureStep[];
  readonly set: (s: ProcedureStep[]) => void;
}) {
  const text = useText();
  return (
    <>
      <p class="soft">{text.t('finish.repair.stepsHelp')}</p>
      {PROCEDURE_STEPS.map((step) => {
        const rank = steps.indexOf(step) + 1;
        return (
          <button
            type="button"
            key={step}
            class="row"
            aria-pressed={rank > 0}
            onClick={() => set(rank > 0 ? steps.filter((one) => one !== step) : [...steps, step])}
          >
            <span class="rank number">{rank > 0 ? rank : ''}</span>
            <span class="first">{text.t(`names.step.${step}`)}</span>
          </button>
        );
      })}
    </>
  );
}
