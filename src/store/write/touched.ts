import type { LotId } from '../../domain/lot/lot.ts';

/** What a write changed, so that whoever shows it can read it again. */
export interface StoreChange {
  /** The lots that changed, or `many` when it is quicker to read all of them again. */
  readonly lots: readonly LotId[] | 'many';
  readonly setup: boolean;
  readonly alerts: boolean;
  /** Something was booked. */
  readonly books?: boolean;
  /** The plan was made anew. */
  readonly plan?: boolean;
  /** How this browser stands to its team. Nothing in the journal changed by it. */
  readonly team?: boolean;
  /** It joined one, left it, or invited somebody. */
  readonly keptTeam?: boolean;
}

export const EVERYTHING: StoreChange = { lots: 'many', setup: true, alerts: true, books: true, plan: true };

const MANY = 100;

/** Collects what a transaction touches. */
export class Touched {
  readonly lots = new Set<LotId>();
  setup = false;
  alerts = false;
  books = false;
  /** A lot that was won, or about which something was noted after its sale, before or after this. */
  folders = false;

  asChange(): StoreChange {
    return {
      lots: this.lots.size > MANY ? 'many' : [...this.lots],
      setup: this.setup,
      alerts: this.alerts,
      ...(this.books && { books: true }),
    };
  }
}

export function bothChanges(a: StoreChange, b: StoreChange): StoreChange {
  const lots = a.lots === 'many' || b.lots === 'many' ? 'many' : [...new Set([...a.lots, ...b.lots])];
  return {
    lots: lots === 'many' || lots.length > MANY ? 'many' : lots,
    setup: a.setup || b.setup,
    alerts: a.alerts || b.alerts,
    ...((a.books || b.books) && { books: true }),
    ...((a.plan || b.plan) && { plan: true }),
    ...((a.team || b.team) && { team: true }),
    ...((a.keptTeam || b.keptTeam) && { keptTeam: true }),
  };
}
