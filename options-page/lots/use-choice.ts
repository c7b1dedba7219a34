import { useMemo, useState } from 'preact/hooks';
import type { LotId } from '../../src/domain/lot/lot.ts';
import type { LotState } from '../../src/folds/lot-state.ts';
import { isLot, type ListLine } from '../../src/views/lots/list-lines.ts';
import { listMemory } from '../place/list-memory.ts';

/** Which lots are chosen, to be acted on at once. */
export interface Choice {
  /** Those chosen, the shown ones in their order first. */
  readonly lots: readonly LotState[];
  /** How many of them the list does not show. */
  readonly hidden: number;
  readonly has: (line: ListLine) => boolean;
  readonly allShown: boolean;
  /** Chooses the lot or the venue on a line or not; with `through`, everything from the line that was pressed before. */
  readonly press: (index: number, through: boolean) => void;
  readonly pressAll: () => void;
  /** Chooses these and no others. */
  readonly only: (lots: readonly LotState[]) => void;
}

/**
 * @param lines what the list shows
 * @param lots all that there are: a lot that is gone is not chosen any more
 */
export function useChoice(lines: readonly ListLine[], lots: readonly LotState[]): Choice {
  const [chosen, setChosen] = useState(listMemory.chosen);
  const [last, setLast] = useState<number>();
  const choose = (ids: ReadonlySet<LotId>) => {
    listMemory.chosen = ids;
    setChosen(ids);
  };
  const shown = useMemo(() => lines.filter(isLot), [lines]);
  const found = useMemo(() => {
    if (chosen.size === 0) return { inSight: [], hidden: [] };
    const inSight = shown.filter(({ id }) => chosen.has(id));
    const known = new Set(inSight.map(({ id }) => id));
    return { inSight, hidden: lots.filter(({ id }) => chosen.has(id) && !known.has(id)) };
  }, [chosen, shown, lots]);
  const has = (line: ListLine) =>
    isLot(line) ? chosen.has(line.id) : line.lots.length > 0 && line.lots.every(({ id }) => chosen.has(id));
  const put = (picked: readonly LotState[], on: boolean) => {
    const ids = new Set(chosen);
    for (const { id } of picked) {
      if (on) ids.add(id);
      else ids.delete(id);
    }
    choose(ids);
  };
  return {
    lots: [...found.inSight, ...found.hidden],
    hidden: found.hidden.length,
    has,
    allShown: chosen.size > 0 && found.inSight.length === shown.length && shown.length > 0,
    press(index, through) {
      const line = lines[index];
      if (line === undefined) return;
      const from = through && last !== undefined ? last : index;
      const span = lines.slice(Math.min(from, index), Math.max(from, index) + 1);
      put([...span.filter(isLot), ...(isLot(line) ? [] : line.lots)], !has(line));
      setLast(index);
    },
    pressAll() {
      put(shown, found.inSight.length < shown.length);
    },
    only: (picked) => choose(new Set(picked.map(({ id }) => id))),
  };
}
