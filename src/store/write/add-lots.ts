import type { Evidence } from '../../domain/lot/evidence.ts';
import type { LotFacts, LotId, LotSource } from '../../domain/lot/lot.ts';
import { type Outcome, ok, type Refusal } from '../../domain/outcome.ts';
import type { NewLot } from '../../journal/happenings/watching.ts';
import type { EntryId } from '../../journal/ids.ts';
import { SALT_BYTES, type SealedChange, sealedAside } from '../../journal/make-entry.ts';
import { ID_RANDOM_BYTES, nextLotId } from '../../journal/sortable-id.ts';
import { LOTS } from '../../journal/subject.ts';
import { checkedChange } from './append.ts';
import { appendRun } from './append-run.ts';
import { refusalFor } from './refused.ts';
import type { Session } from './session.ts';

/** A lot that is to come in. */
export interface LotToAdd {
  readonly facts: LotFacts;
  readonly evidence?: Readonly<Record<string, Evidence>>;
}

export interface AddLotsOptions {
  /** Looked at between batches. What was written stays; `entries` in the answer can be undone. */
  readonly signal?: AbortSignal;
  /** Called after each batch with the number of lots written so far. */
  readonly onProgress?: (written: number) => void;
  /** Lots an entry; 125 when left out. */
  readonly batchSize?: number;
}

/** What an import left in the journal, whether it finished or not. */
export interface LotsAdded {
  readonly lots: readonly LotId[];
  /** One a batch, in order: undo them to take the import back. */
  readonly entries: readonly EntryId[];
  /** The signal stopped it before the end. */
  readonly stopped: boolean;
}

/** Batches under way at once: the next is got ready while the browser still writes the one before. */
const UNDER_WAY = 4;

/**
 * Brings lots in, in batches. Each batch is one entry and one transaction, so that other tabs and alerts get their turn
 * in between, a stop, a full disk or a power cut keeps whole batches.
 */
export async function addLots(
  session: Session,
  source: LotSource,
  lots: Iterable<LotToAdd> | AsyncIterable<LotToAdd>,
  { signal, onProgress, batchSize = 125 }: AddLotsOptions = {},
): Promise<Outcome<LotsAdded, Refusal & { readonly added: LotsAdded }>> {
  const append = appendRun(session);
  const ids: LotId[] = [];
  const entries: EntryId[] = [];
  const underWay: Promise<void>[] = [];
  const end: { refusal: Refusal | null; calledOff: boolean } = { refusal: null, calledOff: false };
  let last: LotId | null = null;

  /** One look at the clock and one draw of randomness for the whole batch; the ids keep the order of the rows. */
  function withIds(batch: readonly LotToAdd[]): NewLot[] {
    const now = session.now();
    const random = session.random(batch.length * ID_RANDOM_BYTES);
    return batch.map(({ facts, evidence = {} }, i) => {
      last = nextLotId(now, last, random.subarray(i * ID_RANDOM_BYTES, (i + 1) * ID_RANDOM_BYTES));
      return { id: last, facts, evidence };
    });
  }

  /** @param final the last one; no signal stops it, because every row was read before */
  async function write(
    change: SealedChange,
    { born, final, onHandedOver }: { born: readonly NewLot[]; final: boolean; onHandedOver: () => void },
  ): Promise<void> {
    const before = [...underWay];
    const written = await append(change, {
      onHandedOver,
      // Where the batch before was not written, nor is this.
      goOn() {
        end.calledOff ||= end.refusal !== null || (!final && signal?.aborted === true);
        return !end.calledOff;
      },
    });
    onHandedOver();
    if (!written.ok) {
      // Not before the batches in front of it are written: nothing is wrong with those.
      await Promise.all(before);
      end.refusal ??= written;
    }
    if (written.ok && written.value.length > 0) {
      for (const { id } of born) ids.push(id);
      for (const { id } of written.value) entries.push(id);
      onProgress?.(ids.length);
    }
  }

  async function take(batch: readonly LotToAdd[], final: boolean): Promise<void> {
    try {
      const born = withIds(batch);
      const change = checkedChange({ subject: LOTS, happening: { kind: 'lots-added', source, lots: born } });
      const sealed = await sealedAside(change, session.random(SALT_BYTES));
      // The next is got ready only once the browser has all of this one: a busy page would not hand it over.
      await new Promise<void>((onHandedOver) => {
        underWay.push(write(sealed, { born, final, onHandedOver }));
      });
    } catch (error) {
      // Not before the batches in front of it are written: nothing is wrong with those.
      await Promise.all(underWay);
      end.refusal ??= refusalFor(error);
    }
    if (underWay.length === UNDER_WAY) await underWay.shift();
  }

  let batch: LotToAdd[] = [];
  for await (const lot of lots) {
    if (batch.length === batchSize) {
      await take(batch, false);
      batch = [];
    }
    end.calledOff ||= signal?.aborted === true;
    if (end.calledOff || end.refusal !== null) break;
    batch.push(lot);
  }
  end.calledOff ||= signal?.aborted === true;
  if (batch.length > 0 && !end.calledOff && end.refusal === null) await take(batch, true);
  await Promise.all(underWay);
  const { refusal, calledOff } = end;
  if (refusal !== null) return { ok: false, ...refusal, added: { lots: ids, entries, stopped: false } };
  return ok({ lots: ids, entries, stopped: calledOff });
}
