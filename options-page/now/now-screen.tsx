import { useEffect, useMemo } from 'preact/hooks';
import { nowList } from '../../src/domain/alerts/now-list.ts';
import { instant } from '../../src/domain/time/instant.ts';
import { sayClock } from '../../src/domain/time/say-time.ts';
import type { Zone } from '../../src/domain/time/zone.ts';
import { Contained } from '../../src/ui/contained.tsx';
import { useNow } from '../../src/ui/hooks/use-now.ts';
import { useClockCorrections } from '../../src/ui/hooks/use-shown-alerts.ts';
import { useStandings } from '../../src/ui/hooks/use-standings.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { peopleHandedTo } from '../../src/views/people.ts';
import { NoticesNote } from './notices-note.tsx';
import { NowCard } from './now-card.tsx';
import { type NowLot, nowLots } from './now-lot.ts';
import './now.css';

const LIST_EVERY = 5_000;

/** For a thumb and a glance: what closes next, the one number to stop at, and a press for whatever happened. */
export function NowScreen({ id }: { id: string }) {
  const { lots, setup, complete } = useWorkspace();
  const now = useNow(1000);
  const { standings } = useStandings(setup, lots, false);
  const corrections = useClockCorrections();
  const all = useMemo(() => nowLots(lots, standings, corrections), [lots, standings, corrections]);
  const people = useMemo(() => peopleHandedTo(lots), [lots]);
  // Fifty thousand lots are not gone through every second: a close may move down the page a little after it.
  const slowly = instant(Math.floor(now / LIST_EVERY) * LIST_EVERY);
  const { reactionMinutes } = setup.alerts;
  const { ahead, unanswered, later } = useMemo(
    () => nowList(all, reactionMinutes, slowly),
    [all, reactionMinutes, slowly],
  );
  const shown = [...ahead.flat(), ...unanswered];
  const wanted = shown.some((lot) => lot.id === id) ? id : (ahead[0]?.[0]?.id ?? unanswered[0]?.id);
  const there = id !== '' && wanted === id;
  useEffect(() => {
    // A call led here: its lot is what the user wants to see.
    if (there) document.getElementById(`now-${id}`)?.focus();
  }, [id, there]);
  const cards = (list: readonly NowLot[]) =>
    list.map((lot) => (
      <Contained key={lot.id} what={lot.name} of={lot}>
        <NowCard lot={lot} people={people} now={now} open={lot.id === wanted} />
      </Contained>
    ));

  return (
    <section class="now">
      <h1>Now</h1>
      <NoticesNote />
      {ahead.map((group) => (
        <div key={group[0]?.id} class={group.length > 1 ? 'now-together' : ''}>
          {group.length > 1 && (
            <h2>
              {group.length} close almost together, {spanWords(group, setup.store.zone)}
            </h2>
          )}
          <ul class="now-list">{cards(group)}</ul>
        </div>
      ))}
      {unanswered.length > 0 && (
        <section class="stack">
          <h2>How did {unanswered.length === 1 ? 'it' : 'they'} end?</h2>
          <ul class="now-list">{cards(unanswered)}</ul>
        </section>
      )}
      {shown.length === 0 && complete && (
        <p>
          Nothing closes soon, and every close has a result. <a href="#/lots">To the lots</a>
        </p>
      )}
      {later > 0 && (
        <p class="quiet small">
          {later.toLocaleString('en-US')} more {later === 1 ? 'closes' : 'close'} later. <a href="#/lots">All lots</a>
        </p>
      )}
    </section>
  );
}

/** "at 12:05 PM", "12:05 PM to 12:08 PM". */
function spanWords(group: readonly NowLot[], zone: Zone): string {
  const [first = '', last = ''] = [group[0], group.at(-1)].map((lot) => lot && sayClock(lot.close, zone));
  return first === last ? `at ${first}` : `${first} to ${last}`;
}
