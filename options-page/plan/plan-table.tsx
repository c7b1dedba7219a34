import type { LotAct } from '../../src/acts/act.ts';
import type { PlanRow as Planned } from '../../src/domain/plan/plan.ts';
import type { Instant } from '../../src/domain/time/instant.ts';
import type { LotState } from '../../src/folds/lot-state.ts';
import { TermLink } from '../../src/ui/term-link.tsx';
import type { Standings } from '../../src/views/lots/standing.ts';
import { choiceOfKey, moveFocus } from './plan-keys.ts';
import { PlanRow } from './plan-row.tsx';

export interface PlanLine {
  readonly lot: LotState;
  readonly row: Planned;
  /** Lots that close too near to it to be reacted to, itself among them; 1 for none. */
  readonly together: number;
}

interface PlanTableProps {
  readonly caption: string;
  readonly lines: readonly PlanLine[];
  readonly standings: Standings;
  readonly now: Instant;
  readonly onAct: (lot: LotState, act: LotAct) => void;
}

/** The lots in closing order, each with its planned bid, why, and what can be said of it. */
export function PlanTable({ caption, lines, standings, now, onAct }: PlanTableProps) {
  const press = (event: KeyboardEvent) => {
    const row = event.target instanceof Element ? event.target.closest('tr') : null;
    const line = lines.find(({ lot }) => lot.id === row?.id.replace('plan-', ''));
    if (row === null || line === undefined || event.ctrlKey || event.metaKey || event.altKey) return;
    const choice = choiceOfKey(event.key, line.lot.planChoice ?? null);
    if (choice !== undefined) onAct(line.lot, { do: 'plan', choice });
    else if (!moveFocus(row, event)) return;
    event.preventDefault();
  };
  return (
    <table class="ledger plan-table" onKeyDown={press}>
      <caption>{caption}</caption>
      <thead>
        <tr>
          <th scope="col">Closes</th>
          <th scope="col">Car</th>
          <th scope="col" class="number">
            <TermLink term="planned-bid">Planned bid</TermLink>
          </th>
          <th scope="col">Why</th>
          <th scope="col">
            <TermLink term="chance-to-win">Chance</TermLink>
          </th>
          <th scope="col" class="number">
            <TermLink term="takes">Takes</TermLink>
          </th>
          <th scope="col" class="no-print">
            Your say
          </th>
        </tr>
      </thead>
      <tbody>
        {lines.map((line) => (
          <PlanRow key={line.lot.id} line={line} standings={standings} now={now} onAct={onAct} />
        ))}
      </tbody>
    </table>
  );
}
