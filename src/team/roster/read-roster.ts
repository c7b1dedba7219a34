import { type Outcome, ok, type Refusal } from '../../domain/outcome.ts';
import { rosterSubject } from '../message/subjects.ts';
import type { Delivered, Wire, WireRefusal } from '../wire/wire.ts';
import { type OpenRoster, openRoster } from './open-roster.ts';
import type { TeamState } from './team-state.ts';

/** The roster as it is now, and what was wrong with the server's. */
export interface RosterRead {
  readonly state: TeamState;
  readonly open: OpenRoster;
  readonly told: readonly string[];
}

const PAGE = 200;
const SHORTER =
  'The server has less of the team’s roster than was seen before: it was restored from an older copy, or holds some back. What was seen holds.';
const NO_ROSTER = { reason: 'no-roster', message: 'The server has no roster of this team. Ask whoever runs it.' };
const OTHER = 'The server has another roster than was seen before. What was seen holds. Ask whoever runs the server.';

/**
 * Reads the roster from the server. What was seen before is never given up: a server that was restored from an older copy
 * gets again from an owner what it lost.
 */
export async function readRoster(state: TeamState, wire: Wire): Promise<Outcome<RosterRead, Refusal>> {
  const known = await openRoster(state, state.roster);
  const last = await wire.lastOn(rosterSubject(state.team));
  if (!last.ok) return last;
  if (known.open !== null && last.value?.data === state.roster.at(-1)) return ok({ state, open: known.open, told: [] });
  const there = await rosterOn(wire, state);
  if (!there.ok) return there;
  const texts = there.value.map(({ data }) => data);
  // A computer that has just joined has none yet.
  if (known.open === null) return firstReading(state, texts);
  const common = state.roster.every((text, i) => texts[i] === undefined || texts[i] === text);
  if (!common) return ok({ state, open: known.open, told: [OTHER] });
  if (texts.length < state.roster.length) {
    const mended = state.owner === null ? null : await sendAgain(state, wire, there.value);
    if (mended !== null && !mended.ok) return mended;
    return ok({ state, open: known.open, told: mended === null ? [SHORTER] : [] });
  }
  const { open, stopped } = await openRoster(state, texts);
  if (open === null) return ok({ state, open: known.open, told: stopped === null ? [] : [stopped.message] });
  const roster = texts.slice(0, open.opened.length);
  return ok({
    state: { ...state, roster, keys: open.keys },
    open,
    told: stopped === null ? [] : [stopped.message],
  });
}

async function firstReading(state: TeamState, texts: readonly string[]): Promise<Outcome<RosterRead, Refusal>> {
  const { open, stopped } = await openRoster(state, texts);
  if (open === null) return { ok: false, ...(stopped ?? NO_ROSTER) };
  const roster = texts.slice(0, open.opened.length);
  return ok({ state: { ...state, roster, keys: open.keys }, open, told: stopped === null ? [] : [stopped.message] });
}

/** What a restored server lost of the roster, in its order. Another owner may do the same: both have the same texts. */
async function sendAgain(
  { roster, team }: TeamState,
  wire: Wire,
  there: readonly Delivered[],
): Promise<Outcome<null, WireRefusal>> {
  let after = there.at(-1)?.place ?? 0;
  for (const data of roster.slice(there.length)) {
    const published = await wire.publish({ subject: rosterSubject(team), data, after });
    if (!published.ok) return published.reason === 'not-last' ? ok(null) : published;
    after = published.value;
  }
  return ok(null);
}

async function rosterOn(wire: Wire, { team }: TeamState): Promise<Outcome<readonly Delivered[], WireRefusal>> {
  const all: Delivered[] = [];
  for (let from = 1; ; ) {
    const page = await wire.from(from, rosterSubject(team), PAGE);
    if (!page.ok) return page;
    all.push(...page.value);
    const last = page.value.at(-1);
    if (last === undefined || page.value.length < PAGE) return ok(all);
    from = last.place + 1;
  }
}
