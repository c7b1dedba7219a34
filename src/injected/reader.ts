/**
 * Injected by the user's click into the page he looks at, as a classic script in the extension's isolated world. It reads
 * nothing by itself: it leaves `headroomReader` there for the call that follows, and notes from then on which parts of the
 * page are made anew. Injected again, it replaces the older copy and keeps what was pointed at and noted meanwhile.
 */
import { sendToBackground } from '../browser/messaging.ts';
import { type PageReader, pageReader } from '../capture/page-reader.ts';
import { askBackground } from '../messages/ask-background.ts';

/** Nobody goes on from a page to another within less after it has come. */
const JUST_LOADED_MS = 3000;

const world: typeof globalThis & { headroomReader?: PageReader } = globalThis;
const older = world.headroomReader;
// The typings give entries of any kind here; this kind is of navigations only.
const [loading] = performance.getEntriesByType('navigation') as PerformanceNavigationTiming[];
const since = loading === undefined || loading.loadEventEnd === 0 ? 0 : performance.now() - loading.loadEventEnd;
world.headroomReader = pageReader(document, window, {
  clock: () => Date.now(),
  kept: { pointed: [...(older?.pointed() ?? [])], watch: older?.watch },
  loaded: { from: loading?.name ?? '', justNow: loading !== undefined && since < JUST_LOADED_MS },
  onPointed: () => void askBackground(sendToBackground, 'pointing-done', {}),
});
