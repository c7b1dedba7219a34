import type { Refusal } from '../../domain/outcome.ts';
import { MINUTE } from '../../domain/time/units.ts';
import { hashOfText } from '../../journal/entry-hash.ts';
import type { DeviceId } from '../../journal/ids.ts';
import { countWords } from '../../views/words/count-words.ts';
import { readPiece } from '../message/piece.ts';
import { readSubject, subjectOf } from '../message/subjects.ts';
import type { Delivered } from '../wire/wire.ts';
import { Ahead, type Waiting } from './ahead.ts';
import { type Checked, checkOpened, isAfterEnd, nameOf, type Opened, openMessage } from './check-message.ts';
import type { Fetching, Position } from './fetching.ts';
import { Pieces } from './pieces.ts';
import { answered, inOrder, Stopped } from './stopped.ts';

/** Messages asked for at once. */
export const PAGE = 50;
/** Entries that are taken in at once: more would hold up whoever writes meanwhile, fewer would make the same views over and over. */
const MOST = 1_000;
/** Clocks differ by this much before anybody is told. */
const CLOCKS_APART = 10 * MINUTE;
/** What may mend by itself: the messages of that device are asked for again next time. */
const WAITS: ReadonlySet<string> = new Set(['missing', 'newer', 'no-key', 'stranger']);
/** Refusals of the journal that would be the same tomorrow. */
const IS_OF_THE_MESSAGE: ReadonlySet<string> = new Set(['conflict', 'forked', 'lot-twice', 'broken-chain']);
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
  private readonly pieces = new Pieces();
  private ahead: Ahead;
  private readonly fastClocks = new Set<DeviceId>();

  constructor(fetching: Fetching, waiting: ReadonlyMap<DeviceId, number>) {
    this.fetching = fetching;
    this.waiting = new Map(waiting);
    this.ahead = new Ahead(fetching.journal);
  }

  sentences(): readonly string[] {
    const told = [...this.told, ...[...this.waiting.keys()].flatMap((device) => this.whyWaiting.get(device) ?? [])];
    if (this.restored) return [RESTORED, ...told];
    if (this.repeated === 0) return told;
    const repeated = countWords(this.repeated, 'message repeats', 'messages repeat');
    return [...told, `${repeated} what came before. Nothing was changed.`];
  }

  /** Whether all that was looked at is in the journal, or left out for good. */
  get isClear(): boolean {
    return this.ahead.messages.length === 0;
  }

  /** From where on each device's messages are asked for again: those that wait, and those of which pieces are missing. */
  standing(): ReadonlyMap<DeviceId, number> {
    const standing = new Map(this.waiting);
    for (const { device, place } of this.pieces.lacking())
      standing.set(device, Math.min(place, standing.get(device) ?? place));
    return standing;
  }

  async isSameServer({ place, hash }: Position): Promise<boolean> {
    if (place === 0) return true;
    const there = answered(await this.fetching.wire.at(place));
    return there !== null && hashOfText(there.data) === hash;
  }

  /** Whatever order its messages are in now: as long as one of them helps, the others are looked at again. */
  async retryWaiting(): Promise<void> {
    this.waitForPieces();
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
        this.waitForPieces();
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
      await this.flush();
      if (page.length < PAGE) return;
    }
  }

  /** Looks at a message and notes what it brings; `flush` brings it in. */
  async take(message: Delivered, which: 'all' | 'what need not wait' = 'what need not wait'): Promise<void> {
    const device = readSubject(message.subject)?.device;
    // What follows a message that has to wait would mostly be missing what is in it.
    if (which !== 'all' && device !== undefined && this.waiting.has(device)) return;
    const { membership } = this.fetching;
    const opened = await openMessage(message, membership);
    if (!opened.ok) return this.leaveOut(message, device, opened);
    const whole = await this.wholeOf(message, opened.value, which);
    if (whole === null) return;
    const checked = await checkOpened(message, whole, membership, this.ahead);
    if (!checked.ok) return this.leaveOut(message, whole.device, checked);
    this.pieces.done(whole.device, checked.value.head.sequence);
    if (checked.value.fresh.length === 0) await this.noteRepeated(whole.device, which);
    else this.noteClock(message, checked.value);
    this.ahead.add(message.place, checked.value);
    if (this.ahead.size >= MOST) await this.flush();
  }

  /** The text of a message; null while it is one of several pieces and others are still to come. */
  private async wholeOf(message: Delivered, opened: Opened, which: string): Promise<Opened | null> {
    const piece = readPiece(opened.text);
    if (piece === null) return opened;
    const { device, member } = opened;
    const { team } = this.fetching.membership;
    const of = `${nameOf(message.place, device)} was left out`;
    if (piece.head.device !== device || piece.team !== team)
      this.told.push(`${of}: it was written as device ${piece.head.device} and put into another place.`);
    else if (isAfterEnd(member, piece.head.sequence))
      this.told.push(`${of}: this device had been put out of the team before.`);
    else if (((await this.ahead.endOf(device))?.sequence ?? 0) >= piece.head.sequence)
      await this.noteRepeated(device, which);
    else {
      const text = await this.pieces.add(piece, message.place);
      return text === null ? null : { ...opened, text };
    }
    return null;
  }

  /** Nobody can have written later than the server stored it: then one of the two clocks is wrong. */
  private noteClock({ at }: Delivered, { device, fresh }: Checked): void {
    const written = fresh.at(-1)?.at ?? at;
    if (written - at < CLOCKS_APART || this.fastClocks.has(device)) return;
    this.fastClocks.add(device);
    const minutes = Math.round((written - at) / MINUTE);
    const ahead =
      minutes < 120 ? countWords(minutes, 'minute', 'minutes') : countWords(Math.round(minutes / 60), 'hour', 'hours');
    this.told.push(
      `The clock of device ${device} is ${ahead} ahead of the server’s. What it wrote counts as later than what others write until then. Set its clock right.`,
    );
  }

  private async noteRepeated(device: DeviceId, which: string): Promise<void> {
    if (which !== 'all' && device !== (await this.fetching.journal.device())) this.repeated += 1;
  }

  private leaveOut({ place }: Delivered, device: DeviceId | undefined, { reason, message }: Refusal): void {
    if (device === undefined || !WAITS.has(reason)) this.told.push(message);
    else this.wait(device, place, message);
  }

  private wait(device: DeviceId, place: number, why: string): void {
    // Pieces of it that came before are not kept: they are asked for again too.
    const first = Math.min(place, ...this.pieces.lacking(device).map((one) => one.place));
    if (first >= (this.waiting.get(device) ?? Number.POSITIVE_INFINITY)) return;
    this.waiting.set(device, first);
    this.whyWaiting.set(device, why);
  }

  private waitForPieces(): void {
    for (const { device, place, message } of this.pieces.lacking()) this.wait(device, place, message);
    this.pieces.clear();
  }

  /** Brings in what was checked: all at once, or one by one where one of them can't come in. */
  async flush(): Promise<void> {
    const { messages } = this.ahead;
    this.ahead = new Ahead(this.fetching.journal);
    if (messages.length === 0 || (await this.bringIn(messages)) === null) return;
    const failed = new Set<DeviceId>();
    for (const one of messages) {
      const { device } = one.checked;
      if (failed.has(device)) {
        this.wait(device, one.place, `${nameOf(one.place, device)} waits: what it follows could not be taken in.`);
        continue;
      }
      const refusal = await this.bringIn([one]);
      if (refusal === null) continue;
      failed.add(device);
      this.told.push(`${nameOf(one.place, device)}: ${refusal.message}`);
    }
  }

  /** @returns why not, where that is because of a message; @throws Stopped for anything else */
  private async bringIn(messages: readonly Waiting[]): Promise<Refusal | null> {
    const taken = await this.fetching.journal.takeIn(
      messages.map(({ checked: { fresh, head, stored, sighting } }) => ({ entries: fresh, head, stored, sighting })),
    );
    // A full disk, or a database that does not answer: nothing of it is lost, and the next time begins here.
    if (!taken.ok && !IS_OF_THE_MESSAGE.has(taken.reason)) throw new Stopped(taken);
    if (!taken.ok) return taken;
    this.added += taken.value.added;
    this.told.push(...taken.value.told);
    return null;
  }
}
