/**
 * Injected by the user's click into the page he looks at, as a classic script in the extension's isolated world. It reads
 * nothing by itself: it leaves `headroomReader` there for the call that follows. Injected again, it replaces the older
 * copy and keeps what was pointed at meanwhile.
 */
import { sendToBackground } from '../browser/messaging.ts';
import { type PageReader, pageReader } from '../capture/page-reader.ts';
import { askBackground } from '../messages/ask-background.ts';

const world: typeof globalThis & { headroomReader?: PageReader } = globalThis;
world.headroomReader = pageReader(document, window, {
  clock: () => Date.now(),
  kept: [...(world.headroomReader?.pointed() ?? [])],
  onPointed: () => void askBackground(sendToBackground, 'pointing-done', {}),
});
