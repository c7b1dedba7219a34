import { describe, expect, test } from 'vitest';
import type { LotAct } from '../../src/acts/act.ts';
import type { Decision } from '../../src/acts/circumstances.ts';
import { readBid } from '../../src/acts/read-bid.ts';
import type { BidState } from '../../src/domain/bid/bid-state.ts';
import { personFirst } from '../../src/domain/bid/person-words.ts';
import { instant } from '../../src/domain/time/instant.ts';
import { bidOffer, proxyWords } from '../../src/views/lots/act-offers.ts';
import { closeAt, dollars } from '../views/lots/bid-history.ts';
import { type ActCase, ActScene, actCases, type ExpectedNote, noteOf } from './act-case.ts';

/** The max bid fell, and the bid is outbid, over it or standing: as the fixture names the states. */
const STATE: Record<BidState['is'], string> = {
  none: 'none',
  standing: 'standing',
  outbid: 'outbid',
  'over-max': 'over max',
  pending: 'pending',
  ended: 'ended',
};

const proxy = (amount: number, more: object = {}): LotAct => ({
  do: 'bid',
  how: 'proxy',
  cents: dollars(amount),
  ...more,
});
const pressed = (amount: number) => proxy(amount, { offered: true });
const won = (amount: number, more: object = {}): LotAct => ({
  do: 'ended',
  result: { ended: 'won', hammerCents: dollars(amount) },
  corrects: null,
  ...more,
});
const lost = (amount: number, more: object = {}): LotAct => ({
  do: 'ended',
  result: { ended: 'lost', hammerCents: dollars(amount) },
  corrects: null,
  ...more,
});
const corrected = (act: LotAct): LotAct => ({ ...act, corrects: undefined }) as LotAct;

/** What is pressed or typed at the door, as the act that the door sends, and the answer that goes on with it. */
interface Played {
  readonly act: LotAct;
  readonly yes?: string;
  readonly typed?: string;
  readonly author?: string;
}

const PLAYED: Readonly<Record<string, Played>> = {
  'now-01': { act: pressed(12_000) },
  'now-03': { act: won(12_000), yes: 'Yes' },
  'now-04': { act: won(10_900) },
  'now-06': { act: won(10_900, { early: true }) },
  'now-08': { act: lost(11_000), yes: 'Yes, it was in' },
  'now-09': { act: lost(11_700) },
  'now-13': { act: pressed(12_000), yes: 'Yes, before the close' },
  'now-14': { act: won(10_900), yes: 'manager' },
  'now-15': { act: pressed(11_000) },
  'now-16': {
    act: { do: 'accept-risk', why: '' },
    yes: 'Accept the risk',
    typed: 'Sold before it arrives, deposit taken',
  },
  'now-17': { act: pressed(12_000) },
  'now-19': { act: pressed(12_000) },
  'notice-01': { act: pressed(12_000), yes: 'Yes, and why', typed: '(the reason given)' },
  'notice-02': { act: pressed(12_000), yes: 'Yes, before the close' },
  'notice-03': { act: pressed(12_000) },
  'notice-05': { act: pressed(12_000) },
  'notice-06': { act: pressed(11_000) },
  'popup-04': { act: proxy(1_000_000_000) },
  'popup-05': { act: proxy(11_950), yes: '$11,950 as typed' },
  'popup-07': { act: proxy(12_400), yes: 'Save', typed: 'Sold before it arrives, deposit taken' },
  'popup-08': { act: proxy(12_400), yes: 'Save' },
  'popup-09': { act: proxy(12_000) },
  'popup-10': { act: proxy(10_000), yes: 'Yes' },
  'popup-11': { act: proxy(11_000) },
  'popup-12': { act: proxy(11_000) },
  'popup-13': { act: proxy(12_000) },
  'results-01': { act: won(12_000), yes: 'Yes' },
  'results-03': { act: corrected(won(11_500)), author: 'bookkeeper' },
  'results-04': { act: corrected(won(11_000)), author: 'bookkeeper' },
  'results-05': {
    act: { do: 'ended', result: { ended: 'not-sold' } },
    yes: 'Change it',
    author: 'bookkeeper',
  },
  'results-07': { act: won(0) },
  'results-08': { act: won(11_900), yes: 'manager' },
  'results-09': { act: { do: 'ended', result: { ended: 'lost' }, corrects: null } },
  'results-11': { act: won(11_400) },
  'results-12': { act: lost(11_600), yes: 'Lost at $11,600', author: 'buyer' },
  'sheet-04': { act: { do: 'withdraw' }, yes: 'Yes', author: 'buyer' },
  'sheet-07': { act: proxy(11_000, { was: dollars(10_000) }), yes: 'Yes', author: 'buyer' },
};

const caseOf = (id: string): ActCase => {
  const found = actCases.find((one) => one.id === id);
  if (found === undefined) throw new Error(`no case ${id}`);
  return found;
};
const played = actCases.flatMap((one) => {
  const how = PLAYED[one.id];
  return how === undefined ? [] : [[`${one.id}: ${one.why}`, one, how] as const];
});

const plain = (text: string) => text.replaceAll('’', "'");

/** The entries that came of it, each with what the fixture names of it. */
function notesOf(scene: ActScene, decision: Decision, wanted: readonly ExpectedNote[]): unknown[] {
  if (decision.as !== 'write') return [];
  const notes = decision.changes.flatMap((change) => noteOf(change, scene.circumstances) ?? []);
  return notes.map((note, i) => {
    const keys = Object.keys(wanted[i] ?? note) as (keyof ExpectedNote)[];
    return Object.fromEntries(keys.filter((key) => key !== 'was').map((key) => [key, note[key] ?? null]));
  });
}
const named = (wanted: readonly ExpectedNote[]) =>
  wanted.map(({ was: _, ...note }) => Object.fromEntries(Object.entries(note).map(([key, v]) => [key, v ?? null])));

describe('an act at a door', () => {
  test.each(played)('%s', (_, { expect: wanted, ...one }, { act, yes, typed, author }) => {
    const scene = new ActScene(one, author);
    const first = scene.do(act);
    if (wanted.refuses !== undefined) {
      expect(['refuse', 'ask']).toContain(first.as);
      if (first.as === 'refuse') expect(plain(first.message)).toContain(plain(wanted.refuses).slice(0, 24));
      return;
    }
    if (wanted.asks === undefined) {
      expect(first.as).toBe((wanted.notes ?? []).length === 0 ? 'nothing' : 'write');
      expect(notesOf(scene, first, wanted.notes ?? [])).toEqual(named(wanted.notes ?? []));
    } else {
      if (first.as !== 'ask') throw new Error(`not asked: ${JSON.stringify(first)}`);
      expect(plain(first.question.words)).toBe(plain(wanted.asks));
      const offered = first.question.choices.map(({ words }) => words);
      for (const choice of wanted.choices ?? []) expect(offered).toContain(personFirst(choice));
      const entries = scene.history.entries.length;
      const leaves = first.question.choices.find(({ leads }) => leads === 'leave' || leads === 'edit');
      scene.answer(first, leaves?.words ?? '');
      expect(scene.history.entries).toHaveLength(entries);
      const after = wanted.ifYes ?? wanted.notes ?? [];
      expect(notesOf(scene, scene.answer(first, personFirst(yes ?? 'Yes'), typed), after)).toEqual(named(after));
    }
    const { stateAfter } = wanted;
    if (stateAfter === undefined) return;
    const state = scene.bids.at(scene.lot, scene.circumstances.now);
    if (stateAfter.state !== undefined) expect(STATE[state.is]).toBe(stateAfter.state);
    if (stateAfter.loud !== undefined) expect(state.loud).toBe(stateAfter.loud);
    if (stateAfter.at !== undefined && 'bid' in state) expect(state.bid.cents).toBe(dollars(stateAfter.at));
  });

  test('two presses of one button are one bid', () => {
    const scene = new ActScene(caseOf('now-11'));
    expect(scene.do(pressed(12_000)).as).toBe('write');
    expect(scene.do(pressed(12_000)).as).toBe('nothing');
  });

  test('no amount is offered that a price has passed, and none that would be over max', () => {
    const offer = (id: string) => {
      const scene = new ActScene(caseOf(id));
      return bidOffer(scene.bids.at(scene.lot, scene.circumstances.now), scene.history.maxBid);
    };
    expect(offer('now-02')).toBeNull();
    expect(offer('now-01')).toEqual({ do: 'bid', verb: 'placed', cents: dollars(12_000) });
    expect(offer('now-15')).toEqual({ do: 'bid', verb: 'cut', cents: dollars(11_000) });
    expect(offer('now-17')).toEqual({ do: 'bid', verb: 'raised', cents: dollars(12_000) });
    const standing = new ActScene(caseOf('now-05'));
    const state = standing.bids.at(standing.lot, standing.circumstances.now);
    expect(proxyWords(state, dollars(11_000))).toBe('I cut it to $11,000');
  });

  test('who said that it ended early is not asked again when the amount is put right', () => {
    const scene = new ActScene(caseOf('now-05'));
    const first = scene.do(won(11_000));
    if (first.as !== 'ask') throw new Error('not asked');
    scene.answer(first, 'Ended early');
    expect(scene.do(won(11_200, { corrects: scene.lot.sale?.result?.entry ?? null })).as).toBe('write');
    expect(scene.lot.sale?.result).toMatchObject({
      early: true,
      result: { ended: 'won', hammerCents: dollars(11_200) },
    });
  });

  test('before the close, won and lost are asked about, and kept as an early end only by the word of him who answers', () => {
    for (const id of ['now-05', 'now-07', 'notice-04', 'sheet-06']) {
      const scene = new ActScene(caseOf(id));
      const asked = scene.do(won(20_000));
      expect(asked.as === 'ask' && asked.question.code).toBe('early');
    }
  });

  test('between two readings of its close nobody knows if it has closed, and either can be said', () => {
    const scene = new ActScene(caseOf('now-18'));
    const asked = scene.do(won(10_900));
    if (asked.as !== 'ask') throw new Error('not asked');
    expect(asked.question.words).toBe('Closes at 2:00 PM or at 4:00 PM. Has it closed?');
    expect(asked.question.choices.map(({ words }) => words)).toEqual(caseOf('now-18').expect.choices);
    scene.answer(asked, 'Closes at 4:00 PM');
    expect(scene.lot.facts.close).toMatchObject({ how: 'picked', doubts: [], otherwise: [] });
    expect(scene.lot.sale?.result).toBeUndefined();
  });

  test('more time after the close is no result, and the proxy stands as before', () => {
    const scene = new ActScene(caseOf('now-10'));
    const { close } = scene.lot.facts;
    scene.do({ do: 'extended', minutes: 10, from: instant(close?.instant ?? 0) });
    const state = scene.bids.at(scene.lot, scene.circumstances.now);
    expect([state.is, 'bid' in state && state.bid.cents]).toEqual(['standing', dollars(11_500)]);
  });

  test('a close that is moved to a time that has passed is asked about first', () => {
    const one = caseOf('sheet-05');
    const scene = new ActScene(one);
    const close = closeAt(instant(Date.parse('2026-06-06T12:30:00-06:00')));
    const asked = scene.do({ do: 'set-close', close });
    if (asked.as !== 'ask') throw new Error('not asked');
    expect(asked.question.words).toBe(one.expect.asks);
    expect(asked.question.choices.map(({ words }) => words)).toEqual(one.expect.choices);
    scene.answer(asked, 'No, change the time');
    expect(scene.lot.facts.close?.instant).not.toBe(close.instant);
    scene.answer(asked, 'Yes');
    expect(scene.lot.facts.close?.instant).toBe(close.instant);
  });

  test('a venue that is said to have let us go is not asked about again', () => {
    const scene = new ActScene(caseOf('sheet-04'));
    scene.answer(scene.do({ do: 'withdraw' }), 'Yes');
    const state = scene.bids.at(scene.lot, scene.circumstances.now);
    expect([state.is, state.asks]).toEqual(['none', []]);
  });
});

describe('an amount that is typed at any door', () => {
  test.each([
    ['0', 'A bid must be above $0.'],
    ['-500', 'A bid must be above $0.'],
    ['1e9', 'Write dollars, such as 12,345'],
    ['', 'Type the amount that you placed.'],
  ])('%s is refused with what to do', (typed, sentence) => {
    const read = readBid(typed);
    expect(read.ok ? '' : read.message).toContain(sentence);
  });
});
