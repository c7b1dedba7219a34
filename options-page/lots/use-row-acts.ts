import { useState } from 'preact/hooks';
import { lotName } from '../../src/domain/lot/car-name.ts';
import type { LotId } from '../../src/domain/lot/lot.ts';
import { instant } from '../../src/domain/time/instant.ts';
import type { Pending } from '../../src/ui/ask/use-asked-act.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { isLot, type ListLine } from '../../src/views/lots/list-lines.ts';
import type { RowAct } from '../../src/views/lots/row-act.ts';
import type { RowWords } from '../../src/views/lots/row-words.ts';
import type { Standings } from '../../src/views/lots/standing.ts';
import { isEnded } from './todo-cell.tsx';

/** What is open below a row. */
export interface OpenRow {
  readonly lot: LotId;
  readonly act: RowAct;
  readonly start?: Pending | undefined;
}

/** What is done elsewhere is one link away. */
const ELSEWHERE: Partial<Record<RowAct, string>> = {
  'setup-venues': '#/setup/venues',
  'setup-fees': '#/setup/fees',
  'setup-titles': '#/setup/titles',
};

interface RowActs {
  readonly open: OpenRow | undefined;
  /** Closes it; where the next row lacks the same figure, that one is opened. */
  readonly close: (saved?: 'saved') => void;
  /** Opens what the row's to-do word asks for; a second time closes it. */
  readonly press: (index: number) => void;
  /** Notes what the row offers with one press. */
  readonly offer: (index: number) => void;
}

/** What is done about one lot in its row. */
export function useRowActs(
  lines: readonly ListLine[],
  wordsOf: (lot: Extract<ListLine, { facts: unknown }>) => RowWords,
  standings: Standings,
): RowActs {
  const workspace = useWorkspace();
  const [open, setOpen] = useState<OpenRow>();
  const lotAt = (index: number) => {
    const line = lines[index];
    return line !== undefined && isLot(line) ? line : undefined;
  };
  return {
    open,
    close(saved) {
      const at = lines.findIndex((line) => isLot(line) && line.id === open?.lot);
      const next = saved === undefined || at === -1 ? undefined : lotAt(at + 1);
      const goesOn = next !== undefined && open?.act === 'retail' && wordsOf(next).todo.act === 'retail';
      setOpen(goesOn ? { lot: next.id, act: 'retail' } : undefined);
    },
    press(index) {
      const lot = lotAt(index);
      if (lot === undefined) return;
      if (open?.lot === lot.id) return setOpen(undefined);
      const row = wordsOf(lot);
      const act = isEnded(row, instant(Date.now())) ? 'end' : row.todo.act;
      if (act === 'sheet' || act === 'close') location.assign(`#/lot/${lot.id}`);
      else if (ELSEWHERE[act] !== undefined) location.assign(ELSEWHERE[act]);
      else setOpen({ lot: lot.id, act });
    },
    async offer(index) {
      const lot = lotAt(index);
      if (lot === undefined) return;
      try {
        const { offerInRow } = await import('./hands/hands.ts');
        const start = await offerInRow(lot, standings, workspace);
        if (start !== null) setOpen({ lot: lot.id, act: 'bid', start });
      } catch (error) {
        workspace.say(`${lotName(lot.facts)}: not saved. ${error instanceof Error ? error.message : String(error)}`);
      }
    },
  };
}
