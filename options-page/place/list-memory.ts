import type { LotId } from '../../src/domain/lot/lot.ts';
import type { LotState } from '../../src/folds/lot-state.ts';
import { FIRST_VIEW } from '../../src/views/lots/first-view.ts';
import type { ListView } from '../../src/views/lots/list-order.ts';

/** What the list remembers while another screen is shown, for as long as the page lives. */
export interface ListMemory {
  view: ListView;
  chosen: ReadonlySet<LotId>;
  /** The lots as they were last shown, in their order: what "next" means on a worksheet. */
  shown: readonly LotState[];
  /** The lot at the top of what was in sight, and how far its row was scrolled past, in CSS pixels. */
  top?: { readonly lot: LotId; readonly past: number } | undefined;
  /** The lot that the keyboard was on. */
  focus?: LotId | undefined;
}

export const listMemory: ListMemory = { view: FIRST_VIEW, chosen: new Set(), shown: [] };
