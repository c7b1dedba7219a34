import { readCloseTime } from '../../domain/close/read-close-time.ts';
import { DAY } from '../../domain/time/units.ts';
import type { PageNode } from '../dom/page-tree.ts';
import type { Candidates } from '../draft/candidates.ts';
import { labelRoles } from '../roles/label-roles.ts';
import { weighWords } from '../roles/role-words.ts';
import { TIME_LABELS } from '../roles/time-roles.ts';
import { clauseBefore } from '../text/clause.ts';
import type { Line } from '../text/lines.ts';
import { pairText } from '../text/pair.ts';
import { countdownsIn } from '../tokens/countdown-tokens.ts';
import { addClose } from './add-close.ts';
import type { FieldReader, LotSource } from './field-reader.ts';
import { type Besides, resolveMoment } from './resolve-moment.ts';
import { momentsSaid, type SaidMoment } from './said-moments.ts';
import { type SharedTime, sharedTime } from './shared-time.ts';

/** When the lot closes: labeled times, times in sentences, countdowns, and what the page says once for all its lots. */
export const readClose: FieldReader = (source, into) => {
  const { clock, extent, lines } = source;
  // On a page about one lot its own lines may say the day and the zone apart from the time.
  const around = extent === 'card' ? source.shared.lines : [...lines, ...source.shared.lines];
  const shared = sharedTime(around, clock.language);
  const besides: Besides = {
    clock,
    shared,
    labelZone: '',
    place: into.best('location')?.value ?? '',
    listed: extent === 'card',
  };
  const said = momentsSaid(source);
  for (const one of said) if (one.role === 'close' || one.role === 'left') put(one, one.weight, besides, into);
  dateAndTimeApart(said, besides, into);
  countdowns(source, into);
  if (into.of('close').every((reading) => reading.score < 0.5) && extent === 'card')
    sharedClose(source, shared, besides, into);
  if (into.of('close').every((reading) => reading.score < 0.5)) loneMoment(said, source, besides, into);
};

function put(one: SaidMoment, weight: number, besides: Besides, into: Candidates): void {
  const token = one.token.date === null && one.day !== null ? { ...one.token, date: one.day } : one.token;
  const resolved = resolveMoment(token, { ...besides, labelZone: one.labelZone });
  if (resolved === null) return;
  addClose(
    resolved.close,
    { text: one.text, from: one.from, score: weight * resolved.factor * (one.prose ? 0.94 : 1), prose: one.prose },
    one.node,
    besides,
    into,
  );
}

/** "Closing date" and "Closing time" in two places. */
function dateAndTimeApart(said: readonly SaidMoment[], besides: Besides, into: Candidates): void {
  const ends = said.filter((one) => one.role === 'close' && !one.prose);
  const dates = ends.filter(({ token }) => token.date !== null && token.clock === null);
  const times = ends.filter(({ token }) => token.clock !== null && token.date === null);
  const [date, time] = [dates[0], times[0]];
  if (date === undefined || time === undefined) return;
  if (new Set(dates.map(({ token }) => token.text)).size > 1 || new Set(times.map(({ token }) => token.text)).size > 1)
    return;
  into.drop('close');
  const token = { ...time.token, date: date.token.date, zone: time.token.zone || date.token.zone };
  put({ ...time, token, text: `${date.text} ${time.text}` }, 0.95, besides, into);
}

function countdowns({ pairs, looseLines, clock }: LotSource, into: Candidates): void {
  const left = (text: string, label: string, cited: string, node: PageNode | null, most: number, prose: boolean) => {
    for (const { text: told, start, end, precise } of countdownsIn(text)) {
      const before = clauseBefore(text.slice(0, start));
      const roles = before === '' ? labelRoles(label).time : weighWords(before, TIME_LABELS);
      if (EXTENDS.test(before)) continue;
      const says = Math.max(
        /^T-/.test(text.slice(start)) ? 0.92 : 0,
        roles.get('left') ?? 0,
        roles.get('close') ?? 0,
        /^\s*\(?(?:left|remaining|to go)\b/i.test(text.slice(end)) ? 0.95 : 0,
      );
      if (says === 0 || (roles.get('other') ?? 0) > says) continue;
      if (!/[1-9]/.test(told)) continue;
      const read = readCloseTime(`${told} left`, clock);
      if (!read.ok) continue;
      const close = { ...read.value, text: told };
      addClose(
        close,
        { text: cited, from: 'page-text', score: precise ? most * says : 0.3, prose },
        node,
        { clock },
        into,
      );
    }
  };
  for (const pair of pairs) left(pair.value.slice(0, 120), pair.label, pairText(pair), pair.node, 0.92, pair.prose);
  for (const line of looseLines)
    if (line.text.length <= 300) left(line.text, '', line.text, line.element, line.prose ? 0.7 : 0.88, line.prose);
}

/** By how much a late bid puts off the close is no time that is left. */
const EXTENDS = /\b(?:last|final|extend\w*|by|within|every|each|another|add(?:s|ed)?|of)$/i;

/** A close that the page states once for all its lots, or for those of a part of it. */
function sharedClose(source: LotSource, shared: SharedTime, besides: Besides, into: Candidates): void {
  const told = source.shared.lines.filter(({ text }) => text.length < 500).map((line) => closeOf(line, source));
  if (told.includes('one by one')) return;
  const nearest = told.slice(0, 300).find((one) => one !== null);
  if (nearest !== undefined && nearest !== 'one by one') put(nearest, 0.85, { ...besides, shared }, into);
}

type SharedClose = SaidMoment | 'one by one' | null;
/** What each line says of a close; hundreds of lots ask the same lines. */
const toldBy = new WeakMap<Line, SharedClose>();

function closeOf(line: Line, source: LotSource): SharedClose {
  const known = toldBy.get(line);
  if (known !== undefined) return known;
  const [first, second] = momentsSaid({ ...source, pairs: [], looseLines: [line] }).filter(
    (one) => one.role === 'close' && one.token.clock !== null,
  );
  const one = first !== undefined && second === undefined && !FIRST_OF_MANY.test(line.text);
  const told = ONE_BY_ONE.test(line.text) ? 'one by one' : one ? { ...first, prose: false } : null;
  toldBy.set(line, told);
  return told;
}

/** Then each lot has a close of its own, which the page does not say. */
const ONE_BY_ONE =
  /\b(?:stagger\w*|one (?:lot )?(?:a|per|every|each) (?:minute|\d)|(?:every|each) (?:\d+|few|two|other) ?(?:seconds?|minutes?)|(?:minutes?|seconds?) apart|one after (?:the other|another)|(?:begins?|starts?|starting) (?:to close|closing)|first lot|in (?:lot )?order)\b/i;
const FIRST_OF_MANY = /\b(?:first|from|starting|begin\w*|apart|one after|staggered|minutes? apart)\b/i;

/** The one moment to come that nothing names. */
function loneMoment(said: readonly SaidMoment[], source: LotSource, besides: Besides, into: Candidates): void {
  const { clock, extent } = source;
  const unnamed = said.filter(
    (one) => one.role === null && (one.token.clock !== null || one.token.iso !== '') && !one.prose,
  );
  const found = unnamed.flatMap((one) => {
    if (one.token.date === null && one.token.iso === '' && extent === 'page') return [];
    const resolved = resolveMoment(one.token, { ...besides, labelZone: one.labelZone });
    return resolved === null || resolved.close.instant <= clock.now || resolved.close.instant > clock.now + 30 * DAY
      ? []
      : [{ one, resolved }];
  });
  const [first] = found;
  if (first === undefined || new Set(found.map(({ resolved }) => resolved.close.instant)).size > 1) return;
  const score = (extent === 'card' ? 0.72 : 0.6) * first.resolved.factor;
  addClose(first.resolved.close, { text: first.one.text, from: first.one.from, score }, first.one.node, besides, into);
}
