import type { Alert } from '../domain/alerts/alert.ts';
import { offerWords } from '../domain/alerts/offer.ts';
import type { Outcome, Refusal } from '../domain/outcome.ts';
import { noticeId, readNoticeId, takesPlaceOf } from './notice-id.ts';
import { addUnrecorded, unrecorded } from './unrecorded.ts';
import type { World } from './world.ts';

/** Writes down that alerts were said. */
export type Recorder = (keys: readonly string[]) => Promise<Outcome<unknown>>;

export interface Spoken {
  readonly said: number;
  /** Why something could not be written down; null when all of it was. */
  readonly trouble: Refusal | null;
}

/**
 * Says alerts, the greatest need first, and writes each down once it was shown. One that can't be shown costs only
 * itself and is tried again at the next look; one that can't be written down counts as said for as long as the browser
 * runs.
 */
export async function speak(world: World, alerts: readonly Alert[], record: Recorder): Promise<Spoken> {
  if (alerts.length === 0) return { said: 0, trouble: null };
  // A look that was given up for slow may come back after another one has spoken from memory.
  const already = new Set(await unrecorded(world));
  let said = 0;
  let trouble: Refusal | null = null;
  for (const alert of alerts.filter(({ keys }) => !keys.every((key) => already.has(key)))) {
    try {
      await say(world, alert);
    } catch (error) {
      world.report(error);
      continue;
    }
    said += 1;
    trouble = (await recordSafely(world, record, alert.keys)) ?? trouble;
  }
  return { said, trouble };
}

/** Null when it was written down, else why not; then it is kept in memory. */
async function recordSafely(world: World, record: Recorder, keys: readonly string[]): Promise<Refusal | null> {
  let written: Outcome<unknown>;
  try {
    written = await record(keys);
  } catch (error) {
    world.report(error);
    written = { ok: false, reason: 'failed', message: String(error) };
  }
  if (written.ok) return null;
  await addUnrecorded(world, keys);
  return written;
}

async function say(world: World, alert: Alert): Promise<void> {
  const id = noticeId(alert);
  await clearNotices(world, (about, other) => takesPlaceOf(alert.about, about) && other !== id);
  await world.showNotice({
    id,
    title: alert.title,
    body: alert.body,
    loudness: alert.loudness,
    buttons: alert.offers.map(offerWords),
  });
}

/** Takes notices off the screen by what they are about. */
export async function clearNotices(world: World, which: (about: string, id: string) => boolean): Promise<void> {
  for (const id of await world.noticeIds()) if (which(readNoticeId(id).about, id)) await world.clearNotice(id);
}
