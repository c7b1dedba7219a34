import { type AftermathSale, naming } from '../../src/demo/demo-aftermath.ts';
import type { LotId } from '../../src/domain/lot/lot.ts';
import type { Happening } from '../../src/journal/happening.ts';
import { LOTS, subjectOfLot } from '../../src/journal/subject.ts';
import type { Store } from '../../src/store/store.ts';

/**
 * Writes sales and what became of them, each lot in one go with how it ended, so that nobody is called for a close that is
 * long over. Null when all went well, else why not.
 */
export async function loadDemoAftermath(store: Store, sales: readonly AftermathSale[]): Promise<string | null> {
  const lots = sales.flatMap(({ lot, again }) => (again === undefined ? [lot] : [lot, again]));
  const noted = sales.flatMap(({ lot, noted }) => noted.map((happening) => about(lot.id, happening)));
  const arrival: Happening = { kind: 'lots-added', source: 'file', lots };
  const arrived = await store.append([{ subject: LOTS, happening: arrival }, ...noted]);
  if (!arrived.ok) return arrived.message;
  for (const { lot, dispute } of sales) {
    if (dispute === undefined) continue;
    const opened = await store.append([about(lot.id, dispute.opened)]);
    if (!opened.ok) return opened.message;
    const [entry] = opened.value;
    if (entry === undefined) throw new Error('a dispute was opened without an entry');
    const followed = await store.append(
      dispute.followed.map((happening) => about(lot.id, naming(happening, entry.id))),
    );
    if (!followed.ok) return followed.message;
  }
  return null;
}

const about = (id: LotId, happening: Happening) => ({ subject: subjectOfLot(id), happening });
