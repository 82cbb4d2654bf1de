/** One callout: the machine in the middle, one sheet at a time beside or under it, two rows that never go away. */
import { useCallback, useEffect, useRef, useState } from 'preact/hooks';
import type { BenchHandle } from '../../bench';
import { DebriefScreen } from '../../panels/debrief/Debrief';
import { FinishSheet, stageNow } from '../../panels/finish/FinishSheet';
import { Guide } from '../../panels/guide/Guide';
import { JobSheet } from '../../panels/job/JobSheet';
import { useText } from '../../panels/kit/text';
import { MachineSheet } from '../../panels/machine/MachineSheet';
import { Notebook } from '../../panels/notebook/Notebook';
import { type Session, SessionContext, SHEETS, type SheetId, useSession } from '../../panels/session';
import { Stakes } from '../../panels/stakes/Stakes';
import { Tray } from '../../panels/tray/Tray';
import '../../styles/callout.css';
import '../../styles/panels.css';
import '../../styles/debrief.css';
import { HeadTools } from '../HeadTools';
import { CommandLine } from './CommandLine';
import { focusSheet } from './focusSheet';
import { KeysDialog } from './KeysDialog';
import { Stage } from './Stage';
import { useKeys } from './useKeys';
import { useWidth } from './useWidth';

export function CalloutScreen({ session }: { readonly session: Session }) {
  return (
    <SessionContext.Provider value={session}>
      <Screen />
      <p class="hidden" role="status" aria-live="polite">
        {session.said.value}
      </p>
    </SessionContext.Provider>
  );
}

function Screen() {
  const session = useSession();
  const closed = session.state.value.verification !== null;
  const [atMachine, setAtMachine] = useState(false);
  if (closed && !atMachine) return <DebriefScreen onMachine={() => setAtMachine(true)} />;
  return <Bench onDebrief={closed ? () => setAtMachine(false) : null} />;
}

function Bench({ onDebrief }: { readonly onDebrief: (() => void) | null }) {
  const text = useText();
  const session = useSession();
  const width = useWidth();
  const bench = useRef<BenchHandle | null>(null);
  const [over, setOver] = useState<'keys' | 'command' | null>(null);
  const setBench = useCallback((handle: BenchHandle | null) => {
    bench.current = handle;
  }, []);
  useKeys(session, bench, setOver);
  // Where there is room something always lies beside the machine; a phone shows the machine alone until asked.
  const fallback: SheetId | null = width === 'narrow' ? null : 'job';
  const wanted = session.sheet.value ?? fallback;
  const beside = width === 'wide';
  const sheet = beside && wanted === 'notebook' ? 'job' : wanted;
  useEffect(() => {
    if (beside && session.sheet.value === 'notebook') focusSheet('notebook');
  }, [beside, session.sheet.value]);
  return (
    <main class="callout" data-width={width} data-sheet={sheet ?? 'none'} data-notes={session.state.value.notes.length}>
      <Title onDebrief={onDebrief} onKeys={() => setOver('keys')} onCommand={() => setOver('command')} />
      <Stage onBench={setBench}>{session.callout.mode === 'guided' && <Guide />}</Stage>
      {sheet && <Sheet id={sheet} canClose={width === 'narrow'} />}
      {beside && (
        <section class="sheet notebook-beside" aria-labelledby="notebook">
          <h2 id="notebook" tabIndex={-1}>
            {text.t('panels.note.title')}
          </h2>
          <div class="sheet-body stack">
            <Notebook />
          </div>
        </section>
      )}
      <Tray />
      <nav class="sheets" aria-label={text.t('panels.sheet.list')}>
        {SHEETS.filter((id) => !(beside && id === 'notebook')).map((id) => (
          <button
            type="button"
            key={id}
            aria-pressed={sheet === id}
            onClick={() => {
              session.sheet.value = width === 'narrow' && sheet === id ? null : id;
              session.placeOpen.value = false;
            }}
          >
            {text.t(`panels.sheet.${id}`)}
          </button>
        ))}
      </nav>
      {over === 'keys' && <KeysDialog onClose={() => setOver(null)} />}
      {over === 'command' && <CommandLine onClose={() => setOver(null)} />}
    </main>
  );
}

interface TitleProps {
  readonly onDebrief: (() => void) | null;
  readonly onKeys: () => void;
  readonly onCommand: () => void;
}

function Title({ onDebrief, onKeys, onCommand }: TitleProps) {
  const text = useText();
  const session = useSession();
  return (
    <header class="callout-title">
      <button type="button" class="skip" onClick={() => document.getElementById('machine')?.focus()}>
        {text.t('app.nav.skip')}
      </button>
      <a class="button quiet" href="#home">
        <span aria-hidden="true">←</span>
        <span class="hidden">{text.t('app.nav.home')}</span>
      </a>
      <div>
        <h1>{text.local(session.callout.text.title)}</h1>
        <p class="soft">
          <span class="hidden">{text.t('panels.tray.clock')}</span>{' '}
          <span class="number">
            {text.t('panels.tray.clockOf', {
              now: Math.floor(session.clock.value / 60),
              budget: session.callout.budget,
            })}
          </span>
        </p>
      </div>
      {session.found && session.kept.value === 'saved' && <p role="alert">{session.found}</p>}
      {session.kept.value !== 'saved' && (
        <p role="alert">
          {text.t(session.kept.value === 'memory-only' ? 'app.error.saveFailed' : 'app.error.otherTab')}
        </p>
      )}
      <span class="callout-tools">
        {onDebrief && (
          <button type="button" class="main" onClick={onDebrief}>
            {text.t('debrief.title')}
          </button>
        )}
        <button type="button" class="quiet wide-only" onClick={onCommand}>
          {text.t('app.command.open')}{' '}
          <span class="key" aria-hidden="true">
            /
          </span>
        </button>
        <button type="button" class="quiet wide-only" onClick={onKeys}>
          {text.t('app.nav.keys')}{' '}
          <span class="key" aria-hidden="true">
            ?
          </span>
        </button>
        <HeadTools />
      </span>
    </header>
  );
}

function Sheet({ id, canClose }: { readonly id: SheetId; readonly canClose: boolean }) {
  const text = useText();
  const session = useSession();
  useEffect(() => {
    // Only who asked for a sheet is taken there; the one that lies open at the start does not pull the focus.
    if (session.sheet.peek() !== null) focusSheet(id);
  }, [id, session]);
  return (
    <section class="sheet" aria-labelledby="sheet-title">
      <header>
        <h2 id="sheet-title" tabIndex={-1}>
          {text.t(id === 'finish' ? `finish.${stageNow(session)}.title` : `panels.sheet.${id}`)}
        </h2>
        {canClose && (
          <button
            type="button"
            class="quiet"
            onClick={() => {
              session.sheet.value = null;
            }}
          >
            {text.t('panels.sheet.close')}
          </button>
        )}
      </header>
      <div class="sheet-body stack" key={id}>
        {id === 'job' && <JobSheet />}
        {id === 'notebook' && <Notebook />}
        {id === 'stakes' && <Stakes />}
        {id === 'machine' && <MachineSheet />}
        {id === 'finish' && <FinishSheet />}
      </div>
    </section>
  );
}
