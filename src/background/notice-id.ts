import type { Alert } from '../domain/alerts/alert.ts';
import { type Offer, offerCode, readOfferCode } from '../domain/alerts/offer.ts';

/** What a notice's id says; it is all that is left of a notice when it is clicked after the worker died. */
export interface NoticeId {
  /** What it is about; two notices about the same thing are never on the screen together. */
  readonly about: string;
  /** Where a click leads. */
  readonly route: string;
  /** What its buttons do, in their order. */
  readonly offers: readonly Offer[];
}

/** None of the parts holds a blank, so blanks part them. */
export const noticeId = ({ about, route, offers }: Pick<Alert, 'about' | 'route' | 'offers'>): string =>
  [about, route, ...offers.map(offerCode)].join(' ');

/** Reads an id, also one that an older Headroom made, which leads to the list. */
export function readNoticeId(id: string): NoticeId {
  const [about = '', route = '', ...codes] = id.split(' ');
  return {
    about,
    route: route.startsWith('#/') ? route : '#/lots',
    offers: codes.flatMap((code) => readOfferCode(code) ?? []),
  };
}

/**
 * Whether a notice takes the place of another: about the same, softly about what comes next, a lot's last call of its
 * earlier ones, and the reminder before the busy hours of the list of the evening before.
 */
export function takesPlaceOf(about: string, other: string): boolean {
  if (about === other || (COMING.test(about) && COMING.test(other))) return true;
  if (about.startsWith('rush-')) return other.startsWith('digest-');
  return about.startsWith('lot-') && other === about.replace('lot-', 'soon-');
}

/** There is one such notice at a time. */
const COMING = /^(?:soons?|rush)-/;

/** Whether a notice says of a lot that it is open; one about several goes by the last of them to close. */
export const isAboutOpen = (about: string, lot: string): boolean => OPEN.some((kind) => about === `${kind}-${lot}`);

const OPEN = ['lot', 'soon', 'soons', 'together'];

/** The lot that a notice is about, as an id; null when it is about something else. */
export const lotOfNotice = ({ about }: NoticeId): string | null =>
  /^(?:lot|soon|closed)-([0-9A-HJKMNP-TV-Z]{26})$/.exec(about)?.[1] ?? null;
