import type { ListView } from './list-order.ts';

/** What the list shows when it is opened. */
export const FIRST_VIEW: ListView = { show: 'open', sort: 'close', descending: false, search: '', byVenue: false };
