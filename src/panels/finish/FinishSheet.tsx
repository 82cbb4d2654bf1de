/** Verdict, then repair, then proof: one after the other, each from what was said before. */
import { useEffect, useRef } from 'preact/hooks';
import { useText } from '../kit/text';
import { type Session, useSession } from '../session';
import { BecauseForm } from './BecauseForm';
import { ProveIt } from './ProveIt';
import { ReflectionForm } from './ReflectionForm';
import { RepairForm } from './RepairForm';
import { VerdictForm } from './VerdictForm';
import { VerifyForm } from './VerifyForm';

type Stage = 'verdict' | 'repair' | 'verify';

/** What comes next: a repair answers the last verdict, a proof the last repair. */
export function stageNow(session: Session): Stage {
  const state = session.state.value;
  if (session.drafts.value.verdict.again) return 'verdict';
  const verdict = state.verdicts.at(-1);
  if (!verdict) return 'verdict';
  const repair = state.repairs.at(-1);
  return repair && repair.action > verdict.action ? 'verify' : 'repair';
}

export function FinishSheet() {
  const text = useText();
  const session = useSession();
  const state = session.state.value;
  const stage = stageNow(session);
  const verdict = state.verdicts.at(-1);
  const repair = state.repairs.at(-1);
  const top = useRef<HTMLDivElement>(null);
  useEffect(() => {
    // The next form begins at its top, not where the last one was left.
    if (stage !== 'verdict') top.current?.parentElement?.scrollTo({ top: 0 });
  }, [stage]);
  return (
    <>
      <div ref={top} class="hidden" />
      {stage !== 'verdict' && verdict && (
        <p class="said">
          {text.t('finish.verdict.given', {
            cause: text.t(`names.cause.${verdict.cause}`),
            size: text.t(`names.size.${verdict.size}`),
          })}
        </p>
      )}
      {stage === 'verify' && repair && (
        <p class="said">{text.t('finish.repair.done', { remedy: text.t(`names.remedy.${repair.remedy}`) })}</p>
      )}
      {stage === 'verdict' && <VerdictForm />}
      {stage === 'repair' && <BecauseForm key={state.verdicts.length} />}
      {stage === 'repair' && <ProveIt />}
      {stage === 'repair' && <RepairForm />}
      {stage === 'verify' && <ReflectionForm />}
      {stage === 'verify' && <VerifyForm />}
    </>
  );
}
