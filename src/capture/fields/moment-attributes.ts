import type { CloseTime } from '../../domain/time/close-time.ts';
import { instantSchema } from '../../domain/time/instant.ts';
import { HOUR, SECOND } from '../../domain/time/units.ts';
import { attributeOf, elementsWithin, isWithin, type PageElement, type PageNode } from '../dom/page-tree.ts';
import type { Candidates } from '../draft/candidates.ts';
import { weighWords } from '../roles/role-words.ts';
import { TIME_LABELS } from '../roles/time-roles.ts';
import { momentsIn } from '../tokens/moment-tokens.ts';
import { addClose } from './add-close.ts';
import type { LotSource } from './field-reader.ts';
import { type Besides, resolveMoment } from './resolve-moment.ts';
import type { SharedTime } from './shared-time.ts';

/** Moments in attributes: of `time` elements, and of those whose name says that something ends then. */
export function readMomentAttributes(
  roots: readonly PageElement[],
  passed: (element: PageElement) => boolean,
  source: LotSource,
  into: Candidates,
): void {
  const { clock } = source;
  const shared: SharedTime = { day: null, zone: '', first: null };
  const besides: Besides = { clock, shared, labelZone: '', place: '', listed: source.extent === 'card' };
  const times: { close: CloseTime; text: string; node: PageElement; named: boolean }[] = [];
  for (const root of roots) {
    for (const element of elementsWithin(root, passed)) {
      const datetime = element.tag === 'time' ? attributeOf(element, 'datetime') : '';
      if (/T\d\d/.test(datetime)) {
        const [token] = momentsIn(datetime, 'en');
        const resolved = token === undefined ? null : resolveMoment(token, besides);
        if (resolved !== null && resolved.close.how === 'stated-offset')
          times.push({
            close: resolved.close,
            text: `datetime="${datetime}"`,
            node: element,
            named: isNamed(element, source),
          });
      }
      for (const [name, value] of element.attributes) {
        if (!name.startsWith('data-') || !ENDS.test(name) || NOT_THE_END.test(name)) continue;
        const close = momentOf(value, besides);
        if (close !== null)
          addClose(
            close,
            { text: `${name}="${value.slice(0, 100)}"`, from: 'page-text', score: 0.86 },
            element,
            besides,
            into,
          );
      }
    }
  }
  for (const { close, node } of times) preferExact(close, node, into);
  const later = times.filter(({ close }) => close.instant > clock.now);
  for (const { close, text, node, named } of times) {
    const score = named
      ? 0.93
      : later.length === 1 && close.instant > clock.now
        ? source.extent === 'card'
          ? 0.72
          : 0.56
        : 0.3;
    addClose(close, { text, from: 'page-text', score }, node, besides, into);
  }
}

/** Hours between the store's zone and one from Newfoundland to Hawaii. */
const MOST_APART = 6;

/**
 * A time of day without a zone, beside the same moment to the machine: what the sale's own clock shows. It was read in the
 * store's zone for want of another, and where the two differ by whole hours as American zones do, the exact one holds.
 */
function preferExact(exact: CloseTime, element: PageElement, into: Candidates): void {
  into.doubtWhere('close', 0.25, (close, node) => {
    if (node === undefined || close.how.startsWith('stated') || close.instant === exact.instant) return false;
    const beside = (node.kind === 'element' && isWithin(element, node)) || isWithin(node, element);
    const hours = (exact.instant - close.instant) / HOUR;
    return beside && Number.isInteger(hours * 2) && Math.abs(hours) < MOST_APART;
  });
}

/** Whether the words beside a `time` element say that the lot closes then. */
function isNamed(element: PageElement, { pairs, lines }: LotSource): boolean {
  const labels = pairs.flatMap((pair) => (holds(pair.node, element) ? [pair.label] : []));
  const before = lines.flatMap((line) =>
    line.element === element.parent || line.element === element ? [line.text] : [],
  );
  return [...labels, ...before].some((text) => {
    const roles = weighWords(text, TIME_LABELS);
    return (roles.get('close') ?? 0) > (roles.get('other') ?? 0);
  });
}

function holds(node: PageNode | null, element: PageElement): boolean {
  for (let up: PageElement | null = element; up !== null; up = up.parent) if (up === node) return true;
  return false;
}

function momentOf(value: string, { clock }: Besides): CloseTime | null {
  const ms = /^\d{10}$/.test(value) ? Number(value) * SECOND : /^\d{13}$/.test(value) ? Number(value) : Number.NaN;
  if (!Number.isNaN(ms)) {
    const at = instantSchema.safeParse(ms);
    const zone = clock.venueZone ?? clock.storeZone;
    return at.success ? { instant: at.data, text: value, zone, how: 'stated-offset', doubts: [], otherwise: [] } : null;
  }
  if (!/^\d{4}-\d\d-\d\dT\d/.test(value)) return null;
  const [token] = momentsIn(value, 'en');
  const shared: SharedTime = { day: null, zone: '', first: null };
  return token === undefined
    ? null
    : (resolveMoment(token, { clock, shared, labelZone: '', place: '', listed: false })?.close ?? null);
}

const ENDS =
  /(?:^|-)(?:end|ends|ending|endtime|enddate|endsat|end-at|close|closes|closing|closetime|closesat|expires?|expiry|deadline|countdown|until|finish|stop)(?:-|$)/;
const NOT_THE_END = /start|open|begin|preview|inspect|pickup|offer|coupon|promo|label|text|format/;

/** A close that only markup states. */
export function readMarkedUpClose(
  value: string,
  text: string,
  own: boolean,
  source: LotSource,
  into: Candidates,
): void {
  if (!/T\d\d/.test(value)) return;
  const [token] = momentsIn(value, 'en');
  const shared: SharedTime = { day: null, zone: '', first: null };
  const besides: Besides = { clock: source.clock, shared, labelZone: '', place: '', listed: false };
  const resolved = token === undefined ? null : resolveMoment(token, besides);
  if (resolved !== null)
    addClose(
      resolved.close,
      { text, from: 'structured-data', score: (own ? 0.86 : 0.5) * resolved.factor },
      null,
      besides,
      into,
    );
}
