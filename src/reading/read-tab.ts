import * as z from 'zod/mini';
import { injectFile, runInTab } from '../browser/page-access.ts';
import { type DraftFieldName, type DraftLots, draftLotsSchema } from '../capture/draft/draft-lot.ts';
import type { PageReader } from '../capture/page-reader.ts';
import type { ReadContext } from '../capture/read-context.ts';
import { type Outcome, ok, refuse } from '../domain/outcome.ts';
import { type PointedPlace, pointedPlaceSchema } from '../domain/setup/site.ts';

const READER = '/injected/reader.js';

/** What the injected program leaves behind in the page's isolated world. */
type World = typeof globalThis & { headroomReader?: PageReader };

/**
 * Reads the page in a tab, at once or steadily: twice alike, with a rest between. What comes back was made in the page's
 * process, so it is checked like any stranger's word.
 */
export async function readTab(
  tab: number,
  context: ReadContext,
  how: 'at-once' | 'steadily',
): Promise<Outcome<DraftLots>> {
  const injected = await injectFile(tab, READER);
  if (!injected.ok) return injected;
  const answer = await runInTab(
    tab,
    (given: unknown, steadily: boolean) => {
      const world: World = globalThis;
      return steadily ? world.headroomReader?.readSteadily(given) : world.headroomReader?.read(given);
    },
    context,
    how === 'steadily',
  );
  if (!answer.ok) return answer;
  const draft = draftLotsSchema.safeParse(answer.value);
  return draft.success
    ? ok(draft.data)
    : refuse('unreadable', 'This page could not be read. Reload it and try again, or type the lot in.');
}

/** Begins to point at a field's value in a tab; it goes on there when the popup is gone. */
export async function startPointing(
  tab: number,
  field: DraftFieldName,
  what: string,
  context: ReadContext,
): Promise<Outcome<unknown>> {
  const injected = await injectFile(tab, READER);
  if (!injected.ok) return injected;
  return runInTab(
    tab,
    (name: DraftFieldName, words: string, given: unknown) => {
      const world: World = globalThis;
      void world.headroomReader?.point(name, words, given);
    },
    field,
    what,
    context,
  );
}

const placesSchema = z.array(pointedPlaceSchema).check(z.maxLength(100));

/** What was pointed at in a tab since this was last asked, oldest first, and of this site only. */
export async function takePointed(tab: number, site: string): Promise<readonly PointedPlace[]> {
  const answer = await runInTab(tab, () => {
    const world: World = globalThis;
    const places = world.headroomReader?.pointed() ?? [];
    world.headroomReader?.forgetPointed();
    return places;
  });
  const places = answer.ok ? placesSchema.safeParse(answer.value) : undefined;
  return places?.success === true ? places.data.filter((place) => place.site === site) : [];
}
