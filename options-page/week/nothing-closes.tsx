import type { Instant } from '../../src/domain/time/instant.ts';
import { sayDate } from '../../src/domain/time/say-time.ts';
import { dateIn } from '../../src/domain/time/wall-clock.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';

interface NothingClosesProps {
  /** "this week", "on this day". */
  readonly what: string;
  readonly after: Instant;
}

/** An empty stretch of time points to the next one that is not. */
export function NothingCloses({ what, after }: NothingClosesProps) {
  const { lots, setup } = useWorkspace();
  const next = lots.reduce<Instant | undefined>((soonest, { facts }) => {
    const close = facts.close?.instant;
    return close !== undefined && close >= after && (soonest === undefined || close < soonest) ? close : soonest;
  }, undefined);
  if (next !== undefined) {
    const date = dateIn(setup.store.zone, next);
    return (
      <p class="note">
        Nothing closes {what}. The next close after it is on <a href={`#/week/${date}`}>{sayDate(date)}</a>.
      </p>
    );
  }
  return (
    <p class="note">
      Nothing closes {what}. <a href="#/add">Add lots</a> with their closing times, and each is shown here in store
      time.
    </p>
  );
}
