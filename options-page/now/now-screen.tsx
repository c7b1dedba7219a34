import { useEffect, useMemo } from 'preact/hooks';
import { nowList } from '../../src/domain/alerts/now-list.ts';
import { closeTogether } from '../../src/domain/rush/collisions.ts';
import { addDays, startOfDay } from '../../src/domain/time/calendar-day.ts';
import { instant } from '../../src/domain/time/instant.ts';
import { dateIn } from '../../src/domain/time/wall-clock.ts';
import { Contained } from '../../src/ui/contained.tsx';
import { useNow } from '../../src/ui/hooks/use-now.ts';
import { useClockCorrections } from '../../src/ui/hooks/use-shown-alerts.ts';
import { useStandings } from '../../src/ui/hooks/use-standings.ts';
import { useTeamWatch } from '../../src/ui/hooks/use-team.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { peopleToHandTo } from '../../src/views/people.ts';
import { DutyLine } from './duty-line.tsx';
import { HeldBackPart } from './held-back.tsx';
import { NoticesNote } from './notices-note.tsx';
import { NowCard } from './now-card.tsx';
import { type NowLot, nowLots } from './now-lot.ts';
import { useSettledPresses } from './use-settled-presses.ts';
import './now.css';

const LIST_EVERY = 5_000;
/** Of what comes later; the list of lots has all of it. */
const MOST_LATER = 30;

/** For a thumb and a glance: what has closed, what closes next with the one number to stop at, and one tap for each. */
export function NowScreen({ id }: { id: string }) {
  const { lots, setup, complete } = useWorkspace();
  const now = useNow(1000);
  const { standings } = useStandings(lots, false);
  const corrections = useClockCorrections();
  const team = useTeamWatch();
  const all = useMemo(() => nowLots(lots, standings, corrections, team?.me), [lots, standings, corrections, team?.me]);
  const people = useMemo(() => peopleToHandTo(lots, setup.rush, team), [lots, setup.rush, team]);
  // Fifty thousand lots are not gone through every second: a close may move down the page a little after it.
  const slowly = instant(Math.floor(now / LIST_EVERY) * LIST_EVERY);
  const { zone } = setup.store;
  const { unanswered, hour, today, later } = useMemo(
    () => nowList(all, startOfDay(addDays(dateIn(zone, slowly), 1), zone), slowly),
    [all, zone, slowly],
  );
  const { reactionMinutes } = setup.alerts;
  const together = useMemo(() => {
    const groups = closeTogether([...hour, ...today], reactionMinutes);
    return new Map(groups.flatMap((group) => group.map((lot) => [lot.id, group.length] as const)));
  }, [hour, today, reactionMinutes]);
  const isLater = later.some((lot) => lot.id === id);
  const there = isLater || [...unanswered, ...hour, ...today].some((lot) => lot.id === id);
  useEffect(() => {
    // A call led here: its lot is what the user wants to see.
    if (there) document.getElementById(`now-${id}`)?.focus();
  }, [id, there]);
  const press = useSettledPresses();
  const part = (title: string, list: readonly NowLot[]) =>
    list.length > 0 && (
      <section class="stack">
        <h2>{title}</h2>
        {cards(list)}
      </section>
    );
  const cards = (list: readonly NowLot[]) => (
    <ul class="now-list">
      {list.map((lot) => (
        <Contained key={lot.id} what={lot.name} of={lot}>
          <NowCard
            lot={lot}
            people={people}
            me={team?.me}
            now={now}
            open={lot.id === id}
            together={together.get(lot.id) ?? 1}
          />
        </Contained>
      ))}
    </ul>
  );

  return (
    <section class="now" {...press}>
      <h1>Now</h1>
      <NoticesNote />
      <DutyLine lots={[...hour, ...today]} now={slowly} />
      <HeldBackPart now={slowly} />
      {part(unanswered.length === 1 ? 'How did it end?' : `How did these ${unanswered.length} end?`, unanswered)}
      {part('Within the hour', hour)}
      {part(unanswered.length + hour.length === 0 ? 'Next' : 'Later today', today)}
      {later.length > 0 && (
        <details class="now-later" open={isLater}>
          <summary class="now-later-head">
            {later.length.toLocaleString('en-US')} more {later.length === 1 ? 'closes' : 'close'} later
          </summary>
          {cards(isLater ? later : later.slice(0, MOST_LATER))}
          <a href="#/lots">All lots</a>
        </details>
      )}
      {unanswered.length + hour.length + today.length === 0 && complete && (
        <p>
          Nothing closes soon, and every close has a result. <a href="#/lots">To the lots</a>
        </p>
      )}
    </section>
  );
}
