import type { Cents } from '../../../src/domain/money/cents.ts';
import { type Outcome, ok, refuse } from '../../../src/domain/outcome.ts';
import { type Comp, compSchema } from '../../../src/domain/retail/comp.ts';

/** A comparable while it is typed: it counts once it has a price. */
export type CompDraft = Omit<Comp, 'price'> & { readonly price?: Cents };

export const EMPTY_COMP: CompDraft = { kind: 'sold', differences: [], leftOut: false };

/** The draft as a comparable; undefined while it has no price yet. */
export function compOf(draft: CompDraft): Outcome<Comp> | undefined {
  if (draft.price === undefined) return undefined;
  const comp = compSchema.safeParse(draft);
  if (comp.success) return ok(comp.data);
  if (draft.price === 0) return refuse('price', 'A comparable needs a price above $0.');
  return refuse('differences', 'The differences take off half the price or more, so that car is not comparable.');
}
