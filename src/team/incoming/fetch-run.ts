import type { Outcome, Refusal } from '../../domain/outcome.ts';
import { hashOfText } from '../../journal/entry-hash.ts';
import type { DeviceId } from '../../journal/ids.ts';
import { countWords } from '../../views/words/count-words.ts';
import { readSubject, subjectOf } from '../message/subjects.ts';
import type { Delivered, WireRefusal } from '../wire/wire.ts';
import { checkMessage } from './check-message.ts';
import type { Fetching, Position } from './fetching.ts';

/** Messages asked for at once. */
export const PAGE = 50;
/** What may mend by itself: the messages of that device are asked for again next time. */
const WAITS: ReadonlySet<string> = new Set(['missing', 'newer', 'no-key', 'stranger']);
const RESTORED =
  'The server’s messages are not those of last time: it was restored from an older copy, or replaced. All of them were looked at again.';

/** One run of fetching: what it takes in, what has to wait, and what is to be told of it. */
export class FetchRun {
  added = 0;
  /** The server is not as it was last time. */
  restored = false;
  /** Messages of others in which nothing was new. */
  private repeated = 0;
  private readonly told: string[] = [];
  readonly waiting: Map<DeviceId, number>;
  private readonly whyWaiting = new Map<DeviceId, string>();
  private readonly fetching: Fetching;

  constructor(fetching: Fetching, waiting: ReadonlyMap<DeviceId, number>) {
    this.fetching = fetching;
    this.waiting = new Map(waiting);
  }

  sentences(): readonly string[] {
    const told = [...this.told, ...[...this.waiting.keys()].flatMap((device) => this.whyWaiting.get(device) ?? [])];
    if (this.restored) return [RESTORED, ...told];
    if (this.repeated === 0) return told;
    const repeated = countWords(this.repeated, 'message repeats', 'messages repeat');
    return [...told, `${repeated} what came before. Nothing was changed.`];
  }

  async whileAnswered(work: () => Promise<void>): Promise<Refusal | null> {
    try {
      await work();
      return null;
    } catch (error) {
      if (error instanceof Stopped) return error.refusal;
      throw error;
    }
  }

  async isSameServer({ place, hash }: Position): Promise<boolean> {
    if (place === 0) return true;
    const there = answered(await this.fetching.wire.at(place));
    return there !== null && hashOfText(there.data) === hash;
  }

  /** Whatever order its messages are in now: as long as one of them helps, the others are looked at again. */
  async retryWaiting(): Promise<void> {
    for (const [device, first] of [...this.waiting]) {
      let before: number;
      do {
        before = this.added;
        this.waiting.delete(device);
        try {
          await this.takeAllOf(device, first);
        } catch (error) {
          this.waiting.set(device, first);
          throw error;
        }
      } while (this.waiting.has(device) && this.added > before);
    }
  }

  private async takeAllOf(device: DeviceId, first: number): Promise<void> {
    const { wire, membership } = this.fetching;
    for (let next = first; ; ) {
      const page = answered(await wire.from(next, subjectOf(membership.team, device), PAGE));
      for (const message of page) {
        inOrder(message, next);
        next = message.place + 1;
        await this.take(message, 'all');
      }
      if (page.length < PAGE) return;
    }
  }

  async take(message: Delivered, which: 'all' | 'what need not wait' = 'what need not wait'): Promise<void> {
    const device = readSubject(message.subject)?.device;
    // What follows a message that has to wait would mostly be missing what is in it.
    if (which !== 'all' && device !== undefined && this.waiting.has(device)) return;
    const { membership, journal } = this.fetching;
    const checked = await checkMessage(message, membership, journal);
    if (!checked.ok) {
      if (device === undefined || !WAITS.has(checked.reason)) this.told.push(checked.message);
      else if (message.place < (this.waiting.get(device) ?? Number.POSITIVE_INFINITY)) {
        this.waiting.set(device, message.place);
        this.whyWaiting.set(device, checked.message);
      }
      return;
    }
    if (checked.value.fresh.length === 0) {
      if (which !== 'all' && checked.value.device !== (await journal.device())) this.repeated += 1;
      return;
    }
    const taken = await journal.takeIn({ entries: checked.value.fresh, head: checked.value.head });
    // A full disk, or a database that does not answer: nothing of it is lost, and the next time begins here.
    if (!taken.ok && !IS_OF_THE_MESSAGE.has(taken.reason)) throw new Stopped(taken);
    if (taken.ok) this.added += taken.value.added;
    else this.told.push(`Message ${message.place} of device ${checked.value.device}: ${taken.message}`);
  }
}

/** Refusals of the journal that would be the same tomorrow. */
const IS_OF_THE_MESSAGE: ReadonlySet<string> = new Set(['conflict', 'forked', 'lot-twice', 'broken-chain']);

class Stopped extends Error {
  readonly refusal: Refusal;

  constructor(refusal: Refusal) {
    super(refusal.message);
    this.refusal = refusal;
  }
}

/** @throws Stopped, so that nobody goes round in circles */
export function inOrder({ place }: Delivered, from: number): void {
  if (place >= from) return;
  throw new Stopped({
    reason: 'out-of-order',
    message: `The team’s server handed out message ${place} again, out of its order. Nothing more was fetched. Ask whoever runs it.`,
  });
}

export function answered<Value>(outcome: Outcome<Value, WireRefusal>): Value {
  if (!outcome.ok) throw new Stopped(outcome);
  return outcome.value;
}
