import { readCloseTime } from '../../domain/close/read-close-time.ts';
import type { CloseTime } from '../../domain/time/close-time.ts';
import { type Instant, instantSchema } from '../../domain/time/instant.ts';
import { DAY } from '../../domain/time/units.ts';
import type { Zone } from '../../domain/time/zone.ts';
import { attributeOf, elementsWithin, type PageElement, type PageNode } from '../dom/page-tree.ts';
import type { Candidates } from '../draft/candidates.ts';
import type { ReadFrom, Sure } from '../draft/draft-lot.ts';
import type { MarkedUpClose } from '../structured/vehicle-readings.ts';
import { isPassedOver, type Line, type Scope } from '../text/lines.ts';
import { type Pair, pairText } from '../text/pair.ts';
import {
  closePhrase,
  datePart,
  isCountdown,
  namesZone,
  tidyTime,
  timePart,
  withUnits,
  zoneStatement,
} from './close-text.ts';

/** What turns a wall time of the page into a moment. */
export interface ClockContext {
  readonly now: Instant;
  readonly storeZone: Zone;
  readonly venueZone: Zone | undefined;
  /** The page's language, which says whether 5/11 is in May or in November. */
  readonly language: string;
}

export interface CloseSources {
  readonly pairs: readonly Pair[];
  readonly lines: readonly Line[];
  readonly scope: Scope;
  readonly markedUp: readonly MarkedUpClose[];
}

/** When the lot closes: labeled times and countdowns, `time` elements, moments in attributes, and markup. */
export function readClose(sources: CloseSources, clock: ClockContext, into: Candidates): void {
  const reader = new CloseReader(clock, zoneStatement(sources.lines), into);
  for (const pair of sources.pairs) reader.pair(pair);
  reader.dateAndTimeApart(sources.pairs);
  for (const line of sources.lines) {
    const phrase = closePhrase(line.text);
    if (phrase !== null) reader.text(phrase, line.text, 'page-text', line.prose ? 'doubtful' : 'likely', line.element);
  }
  for (const root of sources.scope.roots) {
    for (const element of elementsWithin(root, (inner) => isPassedOver(inner, sources.scope)))
      reader.attributes(element);
  }
  for (const close of sources.markedUp) reader.markedUp(close);
}

const SURENESS: readonly Sure[] = ['doubtful', 'likely', 'certain'];

class CloseReader {
  private readonly clock: ClockContext;
  private readonly stated: string;
  private readonly into: Candidates;

  constructor(clock: ClockContext, stated: string, into: Candidates) {
    this.clock = clock;
    this.stated = stated;
    this.into = into;
  }

  pair(pair: Pair): void {
    if (pair.meaning !== 'closes-at' && pair.meaning !== 'time-left') return;
    const most: Sure =
      pair.prose || pair.how === 'trailing' ? (isCountdown(pair.value) ? 'likely' : 'doubtful') : 'certain';
    const within = pair.node?.kind === 'element' ? elementsWithin(pair.node) : [];
    for (const element of within) {
      const at = element.tag === 'time' ? attributeOf(element, 'datetime') : '';
      if (at !== '' && datePart(at)) this.text(at, `${pairText(pair)} (datetime="${at}")`, pair.from, most, element);
      if (pair.how !== 'run-on') this.attributes(element, pair);
    }
    const told = pair.value.split('\n').slice(0, 8).join(' ');
    const value = pair.meaning === 'time-left' ? withUnits(told) : told;
    const after = /^\(?[A-Z]{1,5}T?\)?$/.test(pair.after) ? ` ${pair.after}` : '';
    if (pair.meaning === 'time-left' ? isCountdown(value) : datePart(value) || isCountdown(value)) {
      this.text(`${value}${after}`, pairText(pair), pair.from, most, pair.node);
    }
  }

  /** "Closing date" and "Closing time" in two places. */
  dateAndTimeApart(pairs: readonly Pair[]): void {
    const ends = pairs.filter((pair) => pair.meaning === 'closes-at' && !pair.prose && pair.how !== 'trailing');
    const dates = [...new Set(ends.map((pair) => pair.value).filter((value) => datePart(value) && !timePart(value)))];
    const times = [...new Set(ends.map((pair) => pair.value).filter((value) => timePart(value) && !datePart(value)))];
    const [date] = dates;
    const [time] = times;
    if (date === undefined || time === undefined || dates.length > 1 || times.length > 1) return;
    this.text(`${date} ${time}`, `${date} ${time}`, 'page-text', 'likely');
  }

  /** A moment in an attribute whose name says that something ends then. */
  attributes(element: PageElement, label?: Pair): void {
    for (const [name, value] of element.attributes) {
      if (!name.startsWith('data-') || !ENDS.test(name) || NOT_THE_END.test(name)) continue;
      const text = `${name}="${value.slice(0, 100)}"`;
      const moment = /^\d{10}$/.test(value)
        ? Number(value) * 1000
        : /^\d{13}$/.test(value)
          ? Number(value)
          : Number.NaN;
      const most: Sure = label === undefined ? 'likely' : 'certain';
      if (Number.isNaN(moment)) {
        if (/^\d{4}-\d\d-\d\dT\d/.test(value)) this.text(value, text, 'page-text', most, element);
      } else this.moment(moment, text, most, element);
    }
  }

  markedUp(close: MarkedUpClose): void {
    if (!/T\d\d/.test(close.value)) return;
    this.text(close.value, close.text, 'structured-data', close.own ? 'certain' : 'doubtful');
  }

  text(value: string, cited: string, from: ReadFrom, most: Sure, node: PageNode | null = null): void {
    // A countdown at zero has run out, or has not started.
    if (/^\D*(?:0+\D+)*0+\D*$/.test(value)) return;
    const { now, storeZone, venueZone } = this.clock;
    const zones = { now, storeZone, ...(venueZone === undefined ? {} : { venueZone }) };
    const plain = value.replace(/^(?:on|at|by|in|until)\s+/i, '').slice(0, 200);
    const tidy = isCountdown(plain) ? { text: plain, guessed: false } : tidyTime(plain, this.clock.language);
    const bare = tidy.text;
    const whole = this.stated === '' || isCountdown(bare) || namesZone(bare) ? bare : `${bare} ${this.stated}`;
    const tries = [
      whole,
      bare,
      bare.replace(/\((?![A-Z]{2,5}\))[^()]{0,80}\)/g, ' '),
      bare.split(/ [|/•·–-] /, 1)[0] ?? '',
    ];
    for (const one of new Set(tries.map((text) => text.replace(/\s+/g, ' ').trim()))) {
      const read = one === '' ? undefined : readCloseTime(one, zones);
      if (read?.ok !== true) continue;
      this.add({ ...read.value, text: value.slice(0, 200) }, cited, from, tidy.guessed ? 'doubtful' : most, node);
      return;
    }
  }

  private moment(at: number, cited: string, most: Sure, node: PageNode): void {
    const instant = instantSchema.safeParse(at);
    if (!instant.success) return;
    const zone = this.clock.venueZone ?? this.clock.storeZone;
    const close: CloseTime = {
      instant: instant.data,
      text: cited.slice(0, 200),
      zone,
      how: 'stated-offset',
      doubts: [],
      otherwise: [],
    };
    this.add(close, cited, 'page-text', most, node);
  }

  /** A moment far from now is something else: a build date, a cache key, a year misread. */
  private add(close: CloseTime, text: string, from: ReadFrom, most: Sure, node: PageNode | null): void {
    if (close.instant < this.clock.now - 60 * DAY || close.instant > this.clock.now + 200 * DAY) return;
    const sure = SURENESS[Math.min(SURENESS.indexOf(most), SURENESS.indexOf(surenessOf(close)))] ?? 'doubtful';
    this.into.add('close', { value: close, from, text, sure }, node);
  }
}

const ENDS =
  /(?:^|-)(?:end|ends|ending|endtime|enddate|endsat|close|closes|closing|closetime|closesat|expires?|expiry|deadline|countdown|until|finish)(?:-|$)/;
const NOT_THE_END = /start|open|begin|preview|inspect|pickup|offer|coupon|promo|label|text|format/;

/** A stated zone or offset settles it; a zone that was only supposed does not. */
function surenessOf(close: CloseTime): Sure {
  if (close.doubts.some((doubt) => doubt !== 'zone-data')) return 'doubtful';
  if (close.how === 'venue-zone' || close.doubts.length > 0) return 'likely';
  return close.how === 'store-zone' ? 'doubtful' : 'certain';
}
