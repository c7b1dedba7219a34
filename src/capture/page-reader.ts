import type { PointedPlace } from '../domain/setup/site.ts';
import { instant } from '../domain/time/instant.ts';
import type { DraftFieldName, DraftLots, PageNote } from './draft-lot.ts';
import { examinePlace } from './pointing/examine-place.ts';
import { pointAt } from './pointing/point-at.ts';
import { readContextSchema } from './read-context.ts';
import { readPage } from './read-page.ts';
import { waitUntilQuiet } from './wait-until-quiet.ts';

/**
 * What the injected script leaves in a page's isolated world, under the name `headroomReader`. Arguments and results are
 * plain data, so that they cross from and to an extension page.
 */
export interface PageReader {
  /** Waits until the page has come to rest, then reads it. `context` is checked with `readContextSchema`. */
  readonly read: (context: unknown) => Promise<DraftLots>;
  /**
   * Lets the user point at one field's value; `what` is how the page calls it to him ("the odometer"). What he confirmed
   * waits in `pointed`, because the popup that asked is gone as soon as the page is clicked.
   */
  readonly point: (field: DraftFieldName, what: string, context: unknown) => Promise<void>;
  /** What was pointed at and is not forgotten yet, oldest first. */
  readonly pointed: () => readonly PointedPlace[];
  readonly forgetPointed: () => void;
}

/** What the reader needs of its surroundings. */
export interface ReaderSurroundings {
  /** The time now, in milliseconds since 1970. */
  readonly clock: () => number;
  /** What an older copy of the reader still held. */
  readonly kept: readonly PointedPlace[];
  /** Called when the user is done with pointing, whether at something or not. */
  readonly onPointed: () => void;
}

export function pageReader(
  document: Document,
  view: Window,
  { clock, kept, onPointed }: ReaderSurroundings,
): PageReader {
  const timers = {
    setTimeout: (call: () => void, ms: number) => view.setTimeout(call, ms),
    clearTimeout: (timer: number) => view.clearTimeout(timer),
  };
  let places: readonly PointedPlace[] = kept;
  let pointing = false;
  return {
    read: async (raw) => {
      const context = readContextSchema.parse(raw);
      const rest = await waitUntilQuiet(document, timers);
      const draft = readPage(document, view.location.href, instant(clock()), context);
      return rest === 'quiet' ? draft : { ...draft, notes: [...draft.notes, STILL_CHANGING].slice(0, 40) };
    },
    point: async (field, what, raw) => {
      if (pointing) return;
      const context = readContextSchema.parse(raw);
      pointing = true;
      try {
        const examine = (element: Element) => {
          const about = { field, url: view.location.href, at: instant(clock()), context };
          return examinePlace(element, about, document);
        };
        const place = await pointAt(document, { what, examine });
        if (place !== null) places = [...places, place];
      } finally {
        pointing = false;
        onPointed();
      }
    },
    pointed: () => places,
    forgetPointed: () => {
      places = [];
    },
  };
}

const STILL_CHANGING: PageNote = {
  reason: 'still-changing',
  message: 'The page was still changing while it was read. Read it again in a moment.',
};
