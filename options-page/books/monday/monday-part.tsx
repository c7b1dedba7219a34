import { useMemo } from 'preact/hooks';
import { instant } from '../../../src/domain/time/instant.ts';
import { sayDate } from '../../../src/domain/time/say-time.ts';
import { MINUTE } from '../../../src/domain/time/units.ts';
import { useAfterLots } from '../../../src/ui/hooks/use-after-lots.ts';
import { useNow } from '../../../src/ui/hooks/use-now.ts';
import { StillReading } from '../../../src/ui/still-reading.tsx';
import { useWorkspace } from '../../../src/ui/workspace.ts';
import { dueBills } from '../../../src/views/books/due-bills.ts';
import { type MondayGroup, mondayList } from '../../../src/views/books/monday-list.ts';
import { countWords } from '../../../src/views/words/count-words.ts';
import { useBooks } from '../use-books.ts';
import './monday.css';

const QUARTER_HOUR = 15 * MINUTE;

/** What the bookkeeper settles first: one list of what is open, each line leading to where it is settled. */
export function MondayPart() {
  const { lots, setup } = useWorkspace();
  const { state, folders, today } = useBooks();
  const now = instant(Math.floor(useNow(MINUTE) / QUARTER_HOUR) * QUARTER_HOUR);
  const after = useAfterLots(now);
  const groups = useMemo(
    () =>
      after &&
      mondayList(
        {
          watched: lots,
          after: after.done,
          books: state,
          bills: dueBills(folders, setup, today).bills,
          zone: setup.store.zone,
          certificates: setup.certificates ?? [],
        },
        now,
      ),
    [lots, after, state, folders, setup, today, now],
  );
  if (groups === null) return <StillReading title="Monday list" words="Reading what was won…" />;
  const open = groups.reduce((sum, { lines }) => sum + lines.length, 0);
  return (
    <div class="stack loose monday">
      <header class="row apart">
        <div>
          <h1>Monday list</h1>
          <p class="quiet">
            {sayDate(today)}. {open === 0 ? 'Nothing is open.' : `${countWords(open, 'thing', 'things')} to settle.`}
          </p>
        </div>
        <button type="button" class="no-print" onClick={() => print()}>
          Print
        </button>
      </header>
      {groups.map((group) => group.lines.length > 0 && <Group key={group.title} group={group} />)}
      <InOrder groups={groups.filter(({ lines }) => lines.length === 0)} />
    </div>
  );
}

/** What nothing is open of, in one place: it is read once and needs no hand. */
function InOrder({ groups }: { groups: readonly MondayGroup[] }) {
  if (groups.length === 0) return null;
  return (
    <section class="stack">
      <h2>Nothing open</h2>
      <p class="quiet">{groups.map(({ none }) => none).join(' ')}</p>
    </section>
  );
}

function Group({ group: { title, lines } }: { group: MondayGroup }) {
  return (
    <section class="stack">
      <h2>
        {title} <span class="quiet small">{lines.length.toLocaleString('en-US')}</span>
      </h2>
      <ul class="monday-lines">
        {lines.map(({ key, what, more, hash, late }) => (
          <li key={key}>
            <span class="monday-box" aria-hidden="true" />
            <a href={hash}>{what}</a>
            <span class="quiet small">{more}</span>
            {late && <span class="tag act">overdue</span>}
          </li>
        ))}
      </ul>
    </section>
  );
}
