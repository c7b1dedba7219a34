import { cancelWake, wakeAt } from '../browser/alarms.ts';
import { showBadge } from '../browser/badge.ts';
import { clearNotice, noticeIds, noticesAllowed, showNotice } from '../browser/notifications.ts';
import { recall, remember } from '../browser/session-memory.ts';
import { thisZone } from '../browser/this-zone.ts';
import { instant } from '../domain/time/instant.ts';
import { openThisStore } from '../store/open-this-store.ts';

/** All that the background asks of the browser and the clock, so that a test can be the browser and the clock. */
export const THIS_WORLD = {
  now: () => instant(Date.now()),
  zone: thisZone,
  openStore: () => openThisStore(),
  noticesAllowed,
  noticeIds,
  showNotice,
  clearNotice,
  wakeAt,
  cancelWake,
  showBadge,
  recall,
  remember,
  report: (error: unknown) => reportError(error),
  /** Runs `then` after some milliseconds; returns how to call it off. */
  after(ms: number, then: () => void): () => void {
    const timer = setTimeout(then, ms);
    return () => clearTimeout(timer);
  },
};
export type World = typeof THIS_WORLD;
