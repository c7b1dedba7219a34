import * as z from 'zod/mini';
import { storageKey } from '../../src/ui/demo-mode.ts';

const KEY = 'headroom.result-drafts';
const draftsSchema = z.record(z.string(), z.string().check(z.maxLength(200)));

/** What was typed and not kept yet, by lot; a reloaded tab brings it back. */
export function readDrafts(): Map<string, string> {
  try {
    const drafts = draftsSchema.safeParse(JSON.parse(sessionStorage.getItem(storageKey(KEY)) ?? '{}'));
    return new Map(drafts.success ? Object.entries(drafts.data) : []);
  } catch {
    // Not JSON, or storage is switched off: then there are none.
    return new Map();
  }
}

export function writeDrafts(drafts: ReadonlyMap<string, string>): void {
  try {
    sessionStorage.setItem(storageKey(KEY), JSON.stringify(Object.fromEntries(drafts)));
  } catch {
    // Storage is full or switched off: what was typed is still in its boxes.
  }
}
