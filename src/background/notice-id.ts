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

/** The lot that a notice is about, as an id; null when it is about something else. */
export const lotOfNotice = ({ about }: NoticeId): string | null =>
  /^lot-([0-9A-HJKMNP-TV-Z]{26})$/.exec(about)?.[1] ?? null;
