import { type Outcome, ok, refuse } from '../outcome.ts';
import type { Token } from './token.ts';

/** The tokens that say when it closes, and what else is said of the close. */
export interface ClosingPart {
  readonly tokens: readonly Token[];
  readonly closed: boolean;
  readonly about: boolean;
}

/**
 * Of a text that says more than the close ("Opens Wed 10 AM, closes Sat 2 PM ET") the part that says it. Words that nobody
 * understands here are refused: what they mean could change everything.
 */
export function closingPart(all: readonly Token[]): Outcome<ClosingPart> {
  const tokens = withBareHours(all);
  const unknown = tokens.flatMap((token) => (token.kind === 'unknown' ? token.word : []));
  if (unknown.length > 0) return notUnderstood(unknown);
  const opens = tokens.some(({ kind }) => kind === 'opens');
  const closes = tokens.findLastIndex(({ kind }) => kind === 'closes');
  if (opens && closes < 0)
    return refuse('opens', 'This says when something begins. Write when it closes, such as “Sat Nov 28 2:05 PM ET”.');
  const told = opens ? partFrom(tokens, closes) : tokens;
  return ok({
    tokens: extended(told).filter(({ kind }) => kind !== 'closes' && kind !== 'opens' && kind !== 'about'),
    // "Closed bidding ends Sat 2 PM" is of one that has not.
    closed: closes < 0 && told.some(({ kind }) => kind === 'closed'),
    about: told.some(({ kind }) => kind === 'about'),
  });
}

/** From the word that it closes to the next one that something opens; zones are said once for all of it. */
function partFrom(tokens: readonly Token[], closes: number): readonly Token[] {
  const next = tokens.findIndex(({ kind }, i) => i > closes && kind === 'opens');
  const part = tokens.slice(closes, next < 0 ? tokens.length : next);
  if (part.some(({ kind }) => kind === 'zone')) return part;
  return [...part, ...tokens.filter(({ kind }) => kind === 'zone')];
}

/** "2:00 PM, extended to 2:15 PM": the later time holds, on the day and in the zone that were said before. */
function extended(tokens: readonly Token[]): readonly Token[] {
  const at = tokens.findLastIndex(({ kind }) => kind === 'extended');
  if (at < 0) return tokens;
  const [before, after] = [tokens.slice(0, at), tokens.slice(at + 1)];
  const missing = (...kinds: readonly Token['kind'][]) =>
    after.some(({ kind }) => kinds.includes(kind)) ? [] : before.filter(({ kind }) => kinds.includes(kind));
  return [...missing('date', 'weekday', 'relative'), ...after, ...missing('zone')];
}

/** "20261128 1400 EST": four figures between a day and a zone are an hour and its minutes. */
function withBareHours(tokens: readonly Token[]): readonly Token[] {
  return tokens.map((token, i) => {
    const [, hour, minute] = token.kind === 'unknown' ? (/^([01]\d|2[0-3])([0-5]\d)$/.exec(token.word) ?? []) : [];
    const between = tokens[i - 1]?.kind === 'date' && tokens[i + 1]?.kind === 'zone';
    if (hour === undefined || minute === undefined || !between) return token;
    const time = { hour: Number(hour), minute: Number(minute), second: 0, half: null, wholeDay: true, padded: true };
    return { kind: 'time', time: { ...time, withSeconds: false } };
  });
}

/** Letters such as a zone's. */
const LIKE_ZONE = /^[a-z]{1,4}t$/;

function notUnderstood(words: readonly string[]): Outcome<never> {
  const zone = words.length === 1 && words.find((word) => LIKE_ZONE.test(word));
  if (zone)
    return refuse(
      'unknown-zone',
      `The zone “${zone.toUpperCase()}” is not known here. Write it as a place, such as Asia/Kolkata, or as an offset, such as +05:30.`,
    );
  const said = words.slice(0, 4).join(' ');
  return refuse(
    'not-understood',
    `“${said}” was not understood here. Write only when it closes, such as “Sat Nov 28 2:05 PM ET”, with the zone as ET or America/New_York.`,
  );
}
