import { useMemo, useRef } from 'preact/hooks';
import type { Instant } from '../../src/domain/time/instant.ts';
import type { LotState } from '../../src/folds/lot-state.ts';
import { useStandings } from '../../src/ui/hooks/use-standings.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { BY_FIGURE, SHOW_KEYS, type ShowKey, shows } from '../../src/views/lots/list-filter.ts';
import { type ListLine, withVenues } from '../../src/views/lots/list-lines.ts';
import { type ListView, orderLots } from '../../src/views/lots/list-order.ts';
import type { Standings } from '../../src/views/lots/standing.ts';
import { columnOf } from './columns.tsx';

/** More lots than this are only worked out when something is asked that hangs on it, and are not counted. */
const FEW = 2000;
const FIGURES: ReadonlySet<string> = new Set(['max-bid', 'planned', 'headroom', 'todo']);

export interface ShownLots {
  readonly lots: readonly LotState[];
  readonly lines: readonly ListLine[];
  readonly standings: Standings;
  /** How many lots each cut would show; null while that is not known. */
  readonly counts: Readonly<Record<ShowKey, number>> | null;
  /** Whether what is shown and its order are final. */
  readonly settled: boolean;
}

/** The lots that a view shows, in its order, at a moment. */
export function useShownLots(view: ListView, now: Instant): ShownLots {
  const { lots: all } = useWorkspace();
  const few = all.length <= FEW;
  const byFigure = FIGURES.has(view.sort) || BY_FIGURE.has(view.show);
  const { standings, settled, worked } = useStandings(all, byFigure || few);
  // `settled` and `worked` are dependencies because what is known has changed by then.
  const lots = useMemo(() => {
    const by = columnOf(view.sort)?.by ?? (() => () => null);
    const isKnown = few || settled ? undefined : (lot: LotState) => standings.known(lot) !== undefined;
    return orderLots(all, view, {
      works: settled ? standings : standings.rough,
      now,
      by,
      ...(isKnown && { isKnown }),
    });
  }, [all, view, standings, now, few, settled, byFigure && !few ? worked : 0]);
  const lines = useMemo(() => (view.byVenue ? withVenues(lots) : lots), [lots, view.byVenue]);
  const before = useRef<ShownLots['counts']>(null);
  const counts = useMemo(
    () => (few && settled ? countsOf(all, standings, now) : before.current),
    [all, standings, now, few, settled],
  );
  before.current = counts;
  return { lots, lines, standings, counts: few ? counts : null, settled: settled || !byFigure };
}

function countsOf(lots: readonly LotState[], standings: Standings, now: Instant): Record<ShowKey, number> {
  const counts = Object.fromEntries(SHOW_KEYS.map((key) => [key, 0])) as Record<ShowKey, number>;
  for (const lot of lots) for (const key of SHOW_KEYS) if (shows(lot, key, standings, now)) counts[key] += 1;
  return counts;
}
