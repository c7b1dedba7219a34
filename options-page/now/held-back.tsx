import { useEffect, useState } from 'preact/hooks';
import { recall } from '../../src/browser/session-memory.ts';
import type { Instant } from '../../src/domain/time/instant.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { HELD_BACK, type HeldBack } from '../../src/views/lots/held-back.ts';

const ASK_EVERY = 10_000;

/** What the limit for one hour held back, so that it is read here. */
export function HeldBackPart({ now }: { now: Instant }) {
  const { setup } = useWorkspace();
  const most = setup.alerts.hourlyMost;
  const [held, setHeld] = useState<readonly HeldBack[]>([]);
  const turn = Math.floor(now / ASK_EVERY);
  useEffect(() => {
    if (most === null) return setHeld([]);
    // Without an answer there is nothing to show here; the reminders themselves don't hang on it.
    recall<readonly HeldBack[]>(HELD_BACK).then(
      (found) => setHeld(found ?? []),
      () => setHeld([]),
    );
  }, [most, turn]);
  if (held.length === 0) return null;
  return (
    <section class="stack">
      <h2>Held back</h2>
      <p class="small quiet">
        This hour has had its {most} {most === 1 ? 'reminder' : 'reminders'}.{' '}
        <a href="#/setup/alerts">Change the limit</a>
      </p>
      <ul class="now-held">
        {held.map(({ title, body, route }) => (
          <li key={title}>
            <a href={route}>{title}</a>
            <p class="small now-held-body">{body}</p>
          </li>
        ))}
      </ul>
    </section>
  );
}
