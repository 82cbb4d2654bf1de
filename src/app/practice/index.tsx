/** All ways to practise that are no callout by themselves. */
import { addTexts } from '../../i18n';
import { practiceTexts } from '../../i18n/practice';
import type { WayProps } from '../PracticeLoader';
import '../../styles/panels.css';
import '../../styles/debrief.css';
import '../../styles/practice.css';
import { JobsScreen } from './JobsScreen';
import { PathScreen } from './PathScreen';
import { RadioScreen } from './RadioScreen';
import { RoundScreen } from './RoundScreen';
import { StoreLine } from './StoreLine';
import { TrapDoor, TrapFile } from './TrapDoor';
import { TrapScreen } from './TrapScreen';

// Before anything here is drawn.
addTexts(practiceTexts);

export function PracticeScreen({ way, what }: WayProps) {
  return (
    <main class="practice">
      <StoreLine />
      {way === 'path' && (what === null ? <PathScreen /> : <RoundScreen key={what} what={what} />)}
      {(way === 'short-bag' || way === 'closed-circuit') && <JobsScreen key={way} way={way} />}
      {way === 'trap' &&
        (what === null ? (
          <>
            <TrapScreen />
            <div>
              <TrapFile />
            </div>
          </>
        ) : (
          <TrapDoor key={what} code={what} />
        ))}
      {way === 'radio' && <RadioScreen />}
      {way === 'quarrel' && <RoundScreen key="quarrel" what={null} />}
    </main>
  );
}
