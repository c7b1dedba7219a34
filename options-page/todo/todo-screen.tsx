import { useMemo, useState } from 'preact/hooks';
import { dueAt } from '../../src/domain/after-sale/due.ts';
import { bySoonest } from '../../src/domain/after-sale/to-do.ts';
import { type Instant, instant } from '../../src/domain/time/instant.ts';
import { MINUTE } from '../../src/domain/time/units.ts';
import { dateIn } from '../../src/domain/time/wall-clock.ts';
import { useAfterLots } from '../../src/ui/hooks/use-after-lots.ts';
import { useNow } from '../../src/ui/hooks/use-now.ts';
import { LotsApartNote } from '../../src/ui/lots-apart-note.tsx';
import { StillReading } from '../../src/ui/still-reading.tsx';
import { ShowAll } from '../../src/ui/tables/show-all.tsx';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { groupsByDate, type ToDoItem } from '../../src/views/after-sale/todo-groups.ts';
import { BillsDue } from './bills-due.tsx';
import { MoneyOpen } from './money-open.tsx';
import { NothingToDo } from './nothing-to-do.tsx';
import { ToDoRow } from './todo-row.tsx';
import { WonLots } from './won-lots.tsx';
import './after-sale.css';

const QUARTER_HOUR = 15 * MINUTE;

/** Everything that is left to do after a sale, by date, each done with a tap; and how the won lots stand. */
export function ToDoScreen() {
  const { setup } = useWorkspace();
  const now = instant(Math.floor(useNow(15_000) / MINUTE) * MINUTE);
  // Only whether a win is final depends on the time here; thousands of them are not worked out anew every minute.
  const after = useAfterLots(instant(Math.floor(now / QUARTER_HOUR) * QUARTER_HOUR));
  const [search, setSearch] = useState('');
  const items = useMemo(
    () =>
      (after?.done ?? [])
        .flatMap((lot) => lot.toDos.map((toDo): ToDoItem => ({ lot, toDo, due: toDo.due })))
        .sort(bySoonest),
    [after],
  );
  if (after === null) return <StillReading title="To do" words="Reading what was won…" />;
  const { done: lots, apart } = after;
  if (lots.length + apart.length === 0) return <NothingToDo />;
  const shown = items.filter((item) => fits(item, search));
  const groups = groupsByDate(shown, now, setup.store.zone);
  return (
    <section class="stack loose">
      <header class="row apart">
        <h1>To do</h1>
        <div class="row no-print todo-tools">
          <input
            type="search"
            aria-label="Search to-dos"
            placeholder="Search: car, VIN, venue, bill"
            value={search}
            onInput={(event) => setSearch(event.currentTarget.value)}
          />
          <button type="button" onClick={() => print()}>
            Print
          </button>
        </div>
      </header>
      <LotsApartNote lots={apart} />
      <MoneyOpen lots={lots} />
      <BillsDue search={search} today={dateIn(setup.store.zone, now)} />
      {items.length === 0 && apart.length === 0 && (
        <p>Nothing left to do. Every won lot is paid, delivered and has its title.</p>
      )}
      {items.length > 0 && shown.length === 0 && <p>Nothing to do matches “{search}”.</p>}
      {groups.map(({ title, items: each, folded }) =>
        folded ? (
          <details key={title} class="todo-group">
            <summary>
              <h2>
                {title} <span class="quiet small">{each.length}</span>
              </h2>
            </summary>
            <Rows items={each} now={now} />
          </details>
        ) : (
          <section key={title} class="todo-group stack">
            <h2>
              {title} <span class="quiet small">{each.length}</span>
            </h2>
            <Rows items={each} now={now} />
          </section>
        ),
      )}
      <WonLots lots={lots} />
    </section>
  );
}

/** More of one group than anybody works off in a day; the rest comes when asked for. */
const MOST_ROWS = 100;

function Rows({ items, now }: { items: readonly ToDoItem[]; now: Instant }) {
  const [all, setAll] = useState(false);
  const shown = all ? items : items.slice(0, MOST_ROWS);
  return (
    <>
      <ul class="todo-rows">
        {shown.map((item) => (
          <ToDoRow key={`${item.lot.lot.id} ${item.toDo.key}`} item={item} now={now} late={isLate(item, now)} />
        ))}
      </ul>
      <ShowAll shown={shown.length} of={items.length} which="The soonest" onAll={() => setAll(true)} />
    </>
  );
}

const isLate = ({ due }: ToDoItem, now: Instant) => (dueAt(due) ?? Number.POSITIVE_INFINITY) < now;

function fits({ lot: { lot, place } }: ToDoItem, search: string): boolean {
  const { year, make, model, trim, vin, lotNumber } = lot.facts;
  const text = [year, make, model, trim, vin, lotNumber, place.name].join(' ').toLowerCase();
  return search
    .toLowerCase()
    .split(/\s+/)
    .every((word) => text.includes(word));
}
