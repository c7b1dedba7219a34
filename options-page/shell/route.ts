import * as z from 'zod/mini';
import { type LocalDate, type LocalTime, localDateSchema, localTimeSchema } from '../../src/domain/time/local-date.ts';

/** The screens of the companion page, and what each needs to know. The hash is the whole address: `#/lot/<id>`. */
export type Route =
  | { readonly screen: 'lots' }
  | { readonly screen: 'lot'; readonly id: string }
  | { readonly screen: 'history'; readonly id: string }
  | { readonly screen: 'results'; readonly part: string }
  | {
      readonly screen: 'week';
      readonly show: 'week' | 'day';
      /** Any day of the week, or the day; null is today's. */
      readonly date: LocalDate | null;
      /** Where in the day to begin. */
      readonly at: LocalTime | null;
    }
  /** `id` is the lot that a call was about, or empty. */
  | { readonly screen: 'now'; readonly id: string }
  | { readonly screen: 'plan' }
  | { readonly screen: 'add' }
  | { readonly screen: 'setup'; readonly part: string }
  | { readonly screen: 'backup' }
  | { readonly screen: 'team' }
  | { readonly screen: 'todo' }
  | { readonly screen: 'won'; readonly id: string }
  | { readonly screen: 'disputes' }
  | { readonly screen: 'dispute'; readonly id: string }
  | { readonly screen: 'open-dispute'; readonly lot: string }
  | { readonly screen: 'books'; readonly part: string; readonly more: string }
  | { readonly screen: 'learn'; readonly part: string }
  /** `term` is the entry that a label leads to, or empty. */
  | { readonly screen: 'words'; readonly term: string }
  /** The first page after the installation. */
  | { readonly screen: 'start' }
  | { readonly screen: 'demo-load' }
  | { readonly screen: 'unknown'; readonly hash: string };

/** Reads `location.hash`. An empty one is the watchlist; one that means nothing says so instead of guessing. */
export function readRoute(hash: string): Route {
  const [screen = '', rest = '', more = ''] = hash.replace(/^#\/?/, '').split('/', 3);
  switch (screen) {
    case '':
    case 'lots':
      return { screen: 'lots' };
    case 'lot':
      return { screen: 'lot', id: rest };
    // Addresses that were kept from before still lead here.
    case 'life':
    case 'history':
      return { screen: 'history', id: rest };
    case 'now':
      return { screen: 'now', id: rest };
    case 'results':
    case 'learn':
    case 'setup':
      return { screen, part: rest };
    case 'books':
      return { screen: 'books', part: rest, more };
    case 'week':
      return weekRoute(hash);
    case 'won':
    case 'dispute':
      return { screen, id: rest };
    case 'words':
      return { screen: 'words', term: rest };
    case 'open-dispute':
      return { screen, lot: rest };
    case 'plan':
    case 'todo':
    case 'disputes':
    case 'add':
    case 'backup':
    case 'team':
    case 'start':
    case 'demo-load':
      return { screen };
    default:
      return { screen: 'unknown', hash };
  }
}

/** `#/week` is this week, `#/week/of/2026-11-28` the one with that day, `#/week/2026-11-28/15:00` that day from then on. */
function weekRoute(hash: string): Route {
  const [, , first = '', second = ''] = hash.split('/');
  if (first === '') return { screen: 'week', show: 'week', date: null, at: null };
  const show = first === 'of' ? 'week' : 'day';
  const date = localDateSchema.safeParse(show === 'week' ? second : first);
  if (!date.success || !isPlannable(date.data)) return { screen: 'unknown', hash };
  const at = z.optional(localTimeSchema).safeParse(show === 'day' && second !== '' ? second : undefined);
  return { screen: 'week', show, date: date.data, at: at.data ?? null };
}

/** Zones have no clock changes to go by before 1970, and calendars end somewhere. */
const isPlannable = (date: LocalDate) => date >= '1971-01-01' && date <= '9998-12-31';
