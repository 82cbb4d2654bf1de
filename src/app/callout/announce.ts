/** The one sentence that the live region says after an act. */
import type { Action, AttemptState } from '../../attempt';
import type { Text } from '../../i18n';
import { noteName, sentence, valueText } from '../../panels/kit/say';

export function announce(text: Text, action: Action, state: AttemptState): string {
  switch (action.kind) {
    case 'look':
    case 'read': {
      const note = state.notes.at(-1)!;
      const words = [
        `${sentence(noteName(text, note))}: ${valueText(text, note)}`,
        text.t(`names.settled.${note.settled}`),
      ];
      // A look is what it is at that moment; saying that it has settled would only be noise.
      return `${(note.word === undefined ? words : words.slice(0, 1)).join(', ')}.`;
    }
    case 'wait':
      return text.t('app.said.waited', { minutes: action.seconds / 60, clock: text.clock(state.clock) });
    case 'control':
      return text.t(`names.controller.${state.site.snapshot(state.events, state.clock).controller}`);
    case 'safety':
      return `${sentence(text.t(`names.safety.${action.step}`))}: ${text.t(action.taken ? 'panels.safety.taken' : 'panels.safety.skipped')}.`;
    case 'stake':
      return text.t('panels.stakes.declared', { moment: text.t(`names.moment.${action.moment}`) });
    case 'star':
      return text.t(`app.said.star.${action.side}`, { index: action.note + 1 });
    case 'sum': {
      const sum = state.sums.at(-1)!;
      return text.t(sum.right ? 'app.said.sumRight' : 'app.said.sumWrong');
    }
    case 'verdict':
      return text.t('finish.verdict.given', {
        cause: text.t(`names.cause.${action.cause}`),
        size: text.t(`names.size.${action.size}`),
      });
    case 'repair':
      return text.t('finish.repair.done', { remedy: text.t(`names.remedy.${action.remedy}`) });
    case 'tape':
      return text.t(action.on ? 'app.said.tapeOn' : 'app.said.tapeOff');
    case 'mark':
      return text.t('app.said.marked', { mark: action.text });
    case 'hazard':
      return text.t('app.said.hazard', { act: text.t(`names.hazard.${action.act}`) });
    case 'undo':
      return text.t('app.said.undone');
    case 'verified':
      return text.t('app.said.closed');
    case 'chalk':
      return text.t('app.said.chalked', { expected: text.t(`panels.chalk.${action.expect}`) });
    case 'because':
      return text.t('app.said.because');
    case 'reflect':
      return text.t('app.said.reflect');
    case 'hint':
      return text.t('app.said.hint');
  }
}
