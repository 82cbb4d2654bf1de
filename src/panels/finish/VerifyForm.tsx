/** The repair is proved with readings taken since, or the job is closed without proof. */

import { useText } from '../kit/text';
import { Wait } from '../machine/Controls';
import { useSession } from '../session';
import { NotePicks } from './VerdictForm';

export function VerifyForm() {
  const text = useText();
  const session = useSession();
  const { notes, repairs } = session.state.value;
  const since = repairs.at(-1)?.to ?? 0;
  const fresh = notes.filter(({ time, struck }) => !struck && time >= since);
  const picked = session.drafts.value.proof.filter((index) => fresh.some((note) => note.index === index));
  return (
    <div class="stack">
      <p>{text.t('finish.verify.help')}</p>
      <Wait />
      <NotePicks
        legend={text.t('finish.verify.title')}
        empty={text.t('finish.verify.none')}
        notes={fresh}
        picked={picked}
        pick={(proof) => {
          session.drafts.value = { ...session.drafts.value, proof };
        }}
      />
      <div class="wrap">
        <button
          type="button"
          class="main"
          disabled={picked.length === 0}
          onClick={() => session.dispatch({ kind: 'verified', notes: picked })}
        >
          {text.t('finish.verify.commit')}
        </button>
        <button type="button" onClick={() => session.dispatch({ kind: 'verified', notes: [] })}>
          {text.t('finish.verify.without')}
        </button>
        <button
          type="button"
          class="quiet"
          onClick={() => {
            session.drafts.value = { ...session.drafts.value, verdict: { again: true } };
          }}
        >
          {text.t('finish.repair.another')}
        </button>
      </div>
    </div>
  );
}
