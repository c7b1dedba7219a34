import { type Outcome, ok, type Refusal } from '../../src/domain/outcome.ts';
import { instant } from '../../src/domain/time/instant.ts';
import { HOUR } from '../../src/domain/time/units.ts';
import type { LotState } from '../../src/folds/lot-state.ts';
import type { SetupState } from '../../src/journal/states/setup-state.ts';
import { openThisStore } from '../../src/store/open-this-store.ts';
import type { Store } from '../../src/store/store.ts';
import type { PlanNow } from '../../src/store/views/kept-plan.ts';
import { shownStore } from '../../src/ui/demo-mode.ts';

/** What is read before the first row is drawn. */
export interface FirstLook {
  readonly store: Store;
  readonly setup: SetupState;
  readonly plan: PlanNow | null;
  /** The next lots to close. */
  readonly lots: readonly LotState[];
}

/** As many rows as fit any screen; the rest follows once they stand. */
const FIRST_ROWS = 40;

let tellTakenOver: (notice: Refusal) => void = () => undefined;

/** Says who is told when a newer version in another tab has taken the store over. */
export function onTakenOver(listener: (notice: Refusal) => void): void {
  tellTakenOver = listener;
}

async function look(): Promise<Outcome<FirstLook, Refusal>> {
  const opened = await openThisStore((notice) => tellTakenOver(notice), shownStore());
  if (!opened.ok) return opened;
  const store = opened.value;
  const from = instant(Math.floor((Date.now() - HOUR) / HOUR) * HOUR);
  const [setup, plan, lots] = await Promise.all([
    store.setup(),
    store.plan(),
    store.lotsByClose({ from, limit: FIRST_ROWS }),
  ]);
  return ok({ store, setup, plan, lots });
}

/** Begun as soon as this is loaded, so that the browser reads while the screens' programs are still being made ready. */
export const firstLook: Promise<Outcome<FirstLook, Refusal>> = look();
