/** Taking back what was last done in this moment. Notes keep their numbers, time does not run back. */
import type { Draft } from 'immer';
import { CONTROL_SECONDS, setControls } from './machineChanges';
import { ensure } from './refusal';
import type { AttemptState, Inverse } from './state';
import { setTape } from './taping';

export function takeBack(state: AttemptState, draft: Draft<AttemptState>): void {
  const last = state.undo.at(-1);
  ensure(last !== undefined, 'nothing-to-undo', 'undo');
  draft.undo.pop();
  undone(draft, last);
}

function undone(draft: Draft<AttemptState>, inverse: Inverse): void {
  switch (inverse.kind) {
    case 'note': {
      const note = draft.notes[inverse.note]!;
      note.struck = true;
      note.star = 'none';
      return;
    }
    case 'star':
      draft.notes[inverse.note]!.star = inverse.was;
      return;
    case 'safety':
      if (inverse.was) draft.safety[inverse.step] = { ...inverse.was };
      else delete draft.safety[inverse.step];
      return;
    // Time does not run back: the controls are set back by hand, now.
    case 'control':
      setControls(draft, { ...inverse.was }, draft.clock + CONTROL_SECONDS);
      return;
    case 'tape':
      setTape(draft, draft.tape.at(-1)?.to !== null);
      return;
    case 'mark':
      draft.marks.pop();
      return;
  }
}
