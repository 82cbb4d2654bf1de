/** A trap that came as a link or a file: looked at before it is kept, then opened like any callout. */
import { useEffect, useState } from 'preact/hooks';
import { useText } from '../../panels/kit/text';
import { readTrap } from '../../practice/trap';
import { calloutLink } from '../route';
import { keepPack } from './kept';

export function TrapDoor({ code }: { readonly code: string }) {
  const text = useText();
  const [problem, setProblem] = useState<string | null>(null);
  useEffect(() => {
    const read = readTrap(code);
    if ('problem' in read) return setProblem(read.problem);
    try {
      keepPack(read.pack);
      location.replace(calloutLink(read.pack.id, read.pack.callouts[0]!.id));
    } catch (error) {
      setProblem(error instanceof Error ? error.message : String(error));
    }
  }, [code]);
  if (problem === null) return <p role="status">{text.t('practice.working')}</p>;
  return <p role="alert">{text.t('practice.trap.bad', { reason: problem })}</p>;
}

/** Chooses a trap's file. */
export function TrapFile() {
  const text = useText();
  const [code, setCode] = useState<string | null>(null);
  return (
    <>
      <label class="button file">
        <span>{text.t('practice.trap.open')}</span>
        <input
          type="file"
          accept=".json,application/json"
          onChange={(event) => {
            const file = event.currentTarget.files?.[0];
            if (file) void file.text().then(setCode);
          }}
        />
      </label>
      {code !== null && <TrapDoor code={code} />}
    </>
  );
}
