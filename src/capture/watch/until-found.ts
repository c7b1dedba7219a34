import type { DraftLots } from '../draft/draft-lot.ts';
import { QUIET_RULES, type QuietRules } from './wait-until-quiet.ts';

/** A page that shows nothing yet is often one whose program still waits for its server. */
const SECOND_WAIT: QuietRules = { quietMs: 1200, limitMs: 3000 };

/** Reads after the page has come to rest; where that finds no lot, once more after a longer rest. */
export async function untilFound<Read extends { readonly draft: DraftLots }>(
  readAfter: (rules: QuietRules) => Promise<Read>,
): Promise<Read> {
  const first = await readAfter(QUIET_RULES);
  return first.draft.kind === 'none' ? readAfter(SECOND_WAIT) : first;
}
