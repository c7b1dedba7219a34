import { type Outcome, ok, refuse } from '../../domain/outcome.ts';
import { toBase64 } from '../../journal/base64.ts';
import { checkStamp, imprintIn } from '../../journal/stamp/check-stamp.ts';
import type { StampSeen } from '../../journal/stamp/check-stamps.ts';
import { tokenOfAnswer } from '../../journal/stamp/read-answer.ts';
import { LONGEST_ANSWER } from '../../journal/stamp/stamp-format.ts';
import type { Store } from '../store.ts';

/**
 * Takes the answer of a time-stamp authority: finds the entry that it is of, checks it, and keeps it for backups and packs.
 * No part of the store itself: what reads an answer is large, and only a screen that has one fetches it.
 * @param answer the bytes of a .tsr file, or of the token alone
 */
export async function takeStamp(
  store: Pick<Store, 'headWithImprint' | 'addStamp'>,
  answer: Uint8Array<ArrayBuffer>,
): Promise<Outcome<StampSeen>> {
  if (answer.length > LONGEST_ANSWER)
    return refuse('too-large', 'This file is too large for an answer. Choose the .tsr file that the authority sent.');
  const token = tokenOfAnswer(answer);
  if (!token.ok) return token;
  const imprint = imprintIn(token.value);
  if (imprint === null)
    return refuse(
      'not-a-stamp',
      'This file is signed, but it is no time stamp. Choose the .tsr file that the authority sent.',
    );
  const head = await store.headWithImprint(imprint);
  if (head === null)
    return refuse(
      'no-such-entry',
      'No entry in this browser has the fingerprint that this time stamp is of. Choose the answer to a request that was saved here.',
    );
  const stamp = { ...head, token: toBase64(token.value) };
  const found = await checkStamp(stamp);
  if (found.as !== 'good') return refuse('does-not-hold', `This time stamp is not taken: ${found.message}.`);
  const kept = await store.addStamp(stamp);
  return kept.ok ? ok({ ...head, at: found.at, authority: found.authority, issuer: found.issuer }) : kept;
}
