import { answerNotice } from '../../src/background/answer-notice.ts';
import { lookout, NEXT } from '../../src/background/look-again.ts';
import type { World } from '../../src/background/world.ts';
import type { Badge } from '../../src/browser/badge.ts';
import type { Notice } from '../../src/browser/notifications.ts';
import { refuse } from '../../src/domain/outcome.ts';
import { type Instant, instant } from '../../src/domain/time/instant.ts';
import { MINUTE } from '../../src/domain/time/units.ts';
import { zone } from '../../src/domain/time/zone.ts';
import { storageRefusal } from '../../src/store/connection/storage-failure.ts';
import { openStore } from '../../src/store/open-store.ts';
import type { Store } from '../../src/store/store.ts';
import { testRandom } from '../store/open-test-store.ts';

/** Alerts that were on the screen, and when by the true clock. */
export interface Said {
  readonly keys: readonly string[];
  readonly title: string;
  readonly at: number;
}

/** What of the store's verbs the background writes by. */
const WRITES: ReadonlySet<string> = new Set(['append', 'changeAfter', 'recordShown', 'voidShown']);
const SAFETY_NET = 2 * MINUTE;
/** What browsers raise a nearer alarm to. */
const NEAREST = 30_000;

/**
 * A browser and a clock that a test can break: true time goes on by itself, the wall clock may be wrong, alarms may get
 * lost, and a worker may die before or after anything it asks for. Every wake starts a fresh worker, as after its death.
 */
export class InventedBrowser {
  /** True time, in milliseconds since 1970. */
  time: number;
  /** How far the computer's clock is ahead. */
  clockAhead = 0;
  /** The worker dies at this point of its life: before or after each thing it asks of the world, counted from 1. */
  diesAt: number | null = null;
  /** Only every other worker dies, so that the browser is not a machine for killing them. */
  diesEveryTime = false;
  held = false;
  /** No room on the disk: in Firefox nothing can be written, and Chromium does not even open the database. */
  full: 'not written' | 'not opened' | null = null;
  noticesOff = false;
  loops = 0;
  readonly said: Said[] = [];
  /** Every notice that appeared, and when by the true clock. */
  readonly appeared: { readonly at: number; readonly notice: Notice }[] = [];
  readonly notices = new Map<string, Notice>();
  readonly alarms = new Map<string, number>();
  readonly faults: unknown[] = [];
  /** What lies in memory for as long as the browser runs. */
  readonly memory = new Map<string, unknown>();
  badge: Badge = { text: '', title: '', urgent: false };
  readonly #name: string;
  #random = testRandom(11);

  constructor(start: number, name = 'headroom') {
    this.time = start;
    this.#name = name;
  }

  wallClock(): Instant {
    return instant(this.time + this.clockAhead);
  }

  async store(): Promise<Store> {
    const opened = await openStore({
      name: this.#name,
      now: () => this.wallClock(),
      random: this.#random,
      channel: false,
    });
    if (!opened.ok) throw new Error(opened.message);
    return opened.value;
  }

  /** One life of the worker, from a wake to its death or its rest. Gives back how many points it passed. */
  async wake(because: 'call-due' | 'other' = 'other', mayDie = true): Promise<number> {
    this.loops += 1;
    const life = new Life(mayDie ? this.diesAt : null);
    const world = this.#world(life);
    const look = lookout(world).lookAgain(because);
    await Promise.race([look.catch((error: unknown) => this.faults.push(error)), life.death]);
    life.over = true;
    for (const store of life.stores) store.close();
    return life.points;
  }

  /** Presses a button of a notice. */
  async press(id: string, index: number): Promise<void> {
    const life = new Life(null);
    const world = this.#world(life);
    await answerNotice(world, lookout(world), id, index);
    for (const store of life.stores) store.close();
  }

  /** Lets true time pass until `until`: alarms ring, and the standing one every two minutes. */
  async run(until: number): Promise<void> {
    let net = this.time + SAFETY_NET;
    let dies = true;
    while (this.time < until) {
      const [name, at] = [...this.alarms].sort((a, b) => a[1] - b[1])[0] ?? ['', Number.POSITIVE_INFINITY];
      const next = Math.min(net, at, until);
      this.time = Math.max(this.time, next);
      if (next === until) return;
      if (at <= net) this.alarms.delete(name);
      else net += SAFETY_NET;
      await this.wake(at <= net && name === NEXT ? 'call-due' : 'other', dies || this.diesEveryTime);
      dies = !dies;
    }
  }

  /** Nothing runs until then; afterwards the browser starts. Firefox has lost its alarms by then, Chromium has not. */
  async closedUntil(until: number, alarmsLost: boolean): Promise<void> {
    this.time = until;
    if (alarmsLost) this.alarms.clear();
    this.notices.clear();
    this.memory.clear();
    await this.wake();
  }

  #world(life: Life): World {
    const told: { last: Notice | null } = { last: null };
    return {
      now: () => this.wallClock(),
      zone: () => zone('America/Boise'),
      openStore: () =>
        life.step(async () => {
          if (this.held) return refuse('held', 'Another tab holds them.');
          if (this.full === 'not opened') return { ok: false, ...storageRefusal('disk-full') };
          const store = await this.store();
          life.stores.push(store);
          return { ok: true, value: this.#watched(store, life, told) };
        }),
      noticesAllowed: () => life.step(async () => !this.noticesOff),
      noticeIds: () => life.step(async () => [...this.notices.keys()]),
      showNotice: (notice) =>
        life.step(async () => {
          this.notices.set(notice.id, notice);
          this.appeared.push({ at: this.time, notice });
          told.last = notice;
        }),
      clearNotice: (id) =>
        life.step(async () => {
          this.notices.delete(id);
        }),
      wakeAt: (name, when, now) =>
        life.step(async () => {
          // Browsers count down: a clock that is put afterwards does not move the alarm.
          this.alarms.set(name, this.time + Math.max(NEAREST, when - now));
        }),
      cancelWake: (name) =>
        life.step(async () => {
          this.alarms.delete(name);
        }),
      showBadge: (badge) =>
        life.step(async () => {
          this.badge = badge;
        }),
      recall: <Value>(name: string) =>
        life.step(async () => structuredClone(this.memory.get(name)) as Value | undefined),
      remember: (name, value) =>
        life.step(async () => {
          if (name === 'unrecorded') this.#told(told, freshIn(value, this.memory.get(name)));
          this.memory.set(name, structuredClone(value));
        }),
      report: (error) => this.faults.push(error),
      after: () => () => undefined,
    };
  }

  #told(told: { last: Notice | null }, keys: readonly string[]): void {
    if (told.last === null || keys.length === 0) return;
    this.said.push({ keys, title: told.last.title, at: this.time });
    told.last = null;
  }

  /** What is recorded as shown counts as said only when a notice was shown right before, in the same life. */
  #watched(store: Store, life: Life, told: { last: Notice | null }): Store {
    return new Proxy(store, {
      get: (target, property) => {
        const member: unknown = Reflect.get(target, property);
        if (typeof member !== 'function' || property === 'close' || property === 'subscribe') return member;
        return (...args: readonly unknown[]) => {
          if (this.full !== null && WRITES.has(String(property)))
            return life.step(async () => ({ ok: false, ...storageRefusal('disk-full') }));
          if (property === 'recordShown') this.#told(told, args[0] as readonly string[]);
          return life.step(async () => Reflect.apply(member, target, args));
        };
      },
    });
  }
}

const freshIn = (value: unknown, before: unknown): readonly string[] => {
  const known = new Set(before as readonly string[] | undefined);
  return (value as readonly string[]).filter((key) => !known.has(key));
};

/** One life of a worker. When it dies, whatever it waits for never comes. */
class Life {
  points = 0;
  over = false;
  readonly stores: Store[] = [];
  readonly death: Promise<void>;
  readonly #diesAt: number | null;
  #die: () => void = () => undefined;

  constructor(diesAt: number | null) {
    this.#diesAt = diesAt;
    this.death = new Promise((resolve) => {
      this.#die = resolve;
    });
  }

  async step<Value>(task: () => Promise<Value>): Promise<Value> {
    await this.#point();
    const value = await task();
    await this.#point();
    return value;
  }

  #point(): Promise<void> {
    this.points += 1;
    if (this.over || this.points === this.#diesAt) {
      this.#die();
      return new Promise(() => undefined);
    }
    return Promise.resolve();
  }
}
