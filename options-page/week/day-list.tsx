import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { LocalTime } from '../../src/domain/time/local-date.ts';
import type { LotState } from '../../src/folds/lot-state.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';
import type { Standing } from '../../src/views/lots/standing.ts';
import type { DayGroup } from '../../src/views/week/day-groups.ts';
import { ClosingRow } from './closing-row.tsx';

interface DayListProps {
  readonly groups: readonly DayGroup[];
  readonly standingOf: (lot: LotState) => Standing | undefined;
  /** The first closing from then on gets the focus. */
  readonly startAt: LocalTime | null;
}

/** More closings than this in a day are shown a part at a time. */
const PART = 150;

/** Every closing of the day from top to bottom, with what collides in a bracket. */
export function DayList({ groups, standingOf, startAt }: DayListProps) {
  const { setup } = useWorkspace();
  const table = useRef<HTMLTableElement>(null);
  const [parts, setParts] = useState(1);
  const wanted = useMemo(() => placeOf(groups, startAt), [groups, startAt]);
  const limit = Math.max(parts * PART, wanted + PART);
  const shown = useMemo(() => upTo(groups, limit), [groups, limit]);
  const left = closingsIn(groups) - closingsIn(shown);

  useEffect(() => {
    if (startAt === null) return;
    const rows = [...(table.current?.querySelectorAll<HTMLElement>('a[data-time]') ?? [])];
    const link = rows.find(({ dataset }) => (dataset.time ?? '') >= startAt);
    link?.focus();
    link?.scrollIntoView({ block: 'center' });
  }, [startAt]);

  return (
    <>
      <table class="day-list" ref={table}>
        <thead>
          <tr>
            <td />
            <th scope="col">Closes</th>
            <th scope="col">Car</th>
            <th scope="col" class="number">
              Stop at
            </th>
            <th scope="col" class="day-proxy">
              Proxy
            </th>
            <th scope="col" class="paper-only">
              How it ended
            </th>
          </tr>
        </thead>
        {shown.map((group) => (
          <tbody key={group.key} class={group.colliding > 0 ? 'collides' : ''}>
            {group.items.map((item, i) =>
              item.kind === 'edge' ? (
                <tr key={`${item.edge.kind}-${item.edge.at}`} class={`day-edge at-${item.edge.kind}`}>
                  {group.colliding === 0 && <td />}
                  <th scope="rowgroup" colSpan={5}>
                    {item.edge.words}
                  </th>
                </tr>
              ) : (
                <ClosingRow
                  key={item.closing.id}
                  closing={item.closing}
                  standing={standingOf(item.closing.lot)}
                  zone={setup.store.zone}
                  bracket={
                    group.colliding === 0
                      ? null
                      : i === 0
                        ? { rows: group.items.length, count: group.colliding }
                        : 'above'
                  }
                />
              ),
            )}
          </tbody>
        ))}
      </table>
      {left > 0 && (
        <p class="row">
          <button type="button" onClick={() => setParts(Math.ceil(limit / PART) + 1)}>
            Show more
          </button>
          <span>{left.toLocaleString('en-US')} more close later this day.</span>
        </p>
      )}
    </>
  );
}

const closingsIn = (groups: readonly DayGroup[]) => groups.reduce((sum, { closings }) => sum + closings, 0);

/** How many closings stand before the one to begin with. */
function placeOf(groups: readonly DayGroup[], startAt: LocalTime | null): number {
  if (startAt === null) return 0;
  const closings = groups.flatMap(({ items }) =>
    items.flatMap((item) => (item.kind === 'closing' ? item.closing : [])),
  );
  return Math.max(
    0,
    closings.findIndex(({ time }) => time >= startAt),
  );
}

/** Whole groups, until there are so many closings; a group that is larger than that by itself is cut. */
function upTo(groups: readonly DayGroup[], limit: number): readonly DayGroup[] {
  const shown: DayGroup[] = [];
  let room = limit;
  for (const group of groups) {
    if (room <= 0) break;
    shown.push(group.closings <= room ? group : { ...group, items: group.items.slice(0, room), closings: room });
    room -= group.closings;
  }
  return shown;
}
