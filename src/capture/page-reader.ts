import type { PointedPlace } from '../domain/setup/site.ts';
import { instant } from '../domain/time/instant.ts';
import { safeDom } from './dom/safe-dom.ts';
import type { DraftFieldName, DraftLots, PageNote } from './draft/draft-lot.ts';
import type { TiesFound } from './lots/tied-fields.ts';
import { examinePlace } from './pointing/examine-place.ts';
import { pointAt } from './pointing/point-at.ts';
import { type ReadContext, readContextSchema } from './read-context.ts';
import { type PageReading, readPageWithTies } from './read-page.ts';
import { namedAnother, tiedFields, withoutLeftovers } from './watch/leftovers.ts';
import { PageWatch } from './watch/page-watch.ts';
import { sayTheSame } from './watch/say-the-same.ts';
import { untilFound } from './watch/until-found.ts';
import { type QuietRules, waitUntilQuiet } from './watch/wait-until-quiet.ts';

/**
 * What the injected script leaves in a page's isolated world, under the name `headroomReader`. Arguments and results are
 * plain data, so that they cross from and to an extension page.
 */
export interface PageReader {
  /** Waits until the page has come to rest, then reads it. `context` is checked with `readContextSchema`. */
  readonly read: (context: unknown) => Promise<DraftLots>;
  /**
   * Reads the page until two readings, with a longer rest between them, say the same of every lot; names the fields that
   * the page ties to each lot's VIN. A page that never says the same twice ties nothing.
   */
  readonly readSteadily: (context: unknown) => Promise<DraftLots>;
  /**
   * Lets the user point at one field's value; `what` is how the page calls it to him ("the odometer"). What he confirmed
   * waits in `pointed`, because the popup that asked is gone as soon as the page is clicked.
   */
  readonly point: (field: DraftFieldName, what: string, context: unknown) => Promise<void>;
  /** What was pointed at and is not forgotten yet, oldest first. */
  readonly pointed: () => readonly PointedPlace[];
  readonly forgetPointed: () => void;
  /** The watch over this page, for the next copy of the reader. */
  readonly watch: PageWatch;
}

/** What the reader needs of its surroundings. */
export interface ReaderSurroundings {
  /** The time now, in milliseconds since 1970. */
  readonly clock: () => number;
  /** What an older copy of the reader in the same page still held. */
  readonly kept: { readonly pointed: readonly PointedPlace[]; readonly watch?: PageWatch | undefined };
  /** The address that the document was loaded from, and whether that is only just done. */
  readonly loaded: { readonly from: string; readonly justNow: boolean };
  /** Called when the user is done with pointing, whether at something or not. */
  readonly onPointed: () => void;
}

/** What the reader needs of the window. */
export type PageView = Pick<Window, 'setTimeout' | 'clearTimeout'> & { readonly location: Pick<Location, 'href'> };

const STEADY_RULES: QuietRules = { quietMs: 1500, limitMs: 4000 };
const MOST_READINGS = 4;

export function pageReader(
  document: Document,
  view: PageView,
  { clock, kept, loaded, onPointed }: ReaderSurroundings,
): PageReader {
  const timers = {
    setTimeout: (call: () => void, ms: number) => view.setTimeout(call, ms),
    clearTimeout: (timer: number) => view.clearTimeout(timer),
  };
  const dom = safeDom(document);
  const address = () => view.location.href;
  const watch = kept.watch ?? new PageWatch(document, { address, loadedFrom: loaded.from, justLoaded: loaded.justNow });
  let places: readonly PointedPlace[] = kept.pointed;
  let pointing = false;

  const readAfter = async (context: ReadContext, rules: QuietRules) => {
    const rest = await waitUntilQuiet(document, timers, rules);
    const from = address();
    const { draft, ties } = readPageWithTies(document, from, instant(clock()), context);
    return { draft: rest === 'quiet' ? draft : withNote(draft, STILL_CHANGING), ties, from };
  };
  const read = ({ draft, ties }: PageReading): DraftLots => {
    if (draft.kind !== 'one') return draft;
    const found = ties();
    const moved = watch.movedOn() === 'no' && namedAnother(draft, found, watch, dom) ? 'seen' : watch.movedOn();
    return moved === 'no' ? draft : withoutLeftovers(draft, tiedFields(draft, found, watch, dom)[0] ?? [], moved);
  };
  const withTied = (draft: DraftLots, ties: TiesFound): DraftLots => {
    const tied = tiedFields(draft, ties, watch, dom);
    return { ...draft, lots: draft.lots.map((lot, at) => ({ ...lot, tied: [...(tied[at] ?? [])] })) };
  };

  return {
    read: async (raw) => {
      const context = readContextSchema.parse(raw);
      return read(await untilFound((rules) => readAfter(context, rules)));
    },
    readSteadily: async (raw) => {
      const context = readContextSchema.parse(raw);
      let before = await untilFound((rules) => readAfter(context, rules));
      for (let times = 1; times < MOST_READINGS; times++) {
        const now = await readAfter(context, STEADY_RULES);
        if (now.from === before.from && sayTheSame(before.draft, now.draft)) return withTied(read(now), now.ties());
        before = now;
      }
      return withNote(read(before), STILL_CHANGING);
    },
    point: async (field, what, raw) => {
      if (pointing) return;
      const context = readContextSchema.parse(raw);
      pointing = true;
      try {
        const examine = (element: Element) => {
          const about = { field, url: address(), at: instant(clock()), context };
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
    watch,
  };
}

const withNote = (draft: DraftLots, note: PageNote): DraftLots =>
  draft.notes.some(({ reason }) => reason === note.reason)
    ? draft
    : { ...draft, notes: [...draft.notes, note].slice(0, 40) };

const STILL_CHANGING: PageNote = {
  reason: 'still-changing',
  message: 'The page was still changing while it was read. Read it again in a moment.',
};
