import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { toBase64 } from '../../../src/journal/base64.ts';
import { chainHeadSchema } from '../../../src/journal/chain-head.ts';
import { readNoted } from '../../../src/journal/noted.ts';
import { tokenOfAnswer } from '../../../src/journal/stamp/read-answer.ts';
import { stampRequest } from '../../../src/journal/stamp/stamp-request.ts';
import { takeStamp } from '../../../src/store/signing/take-stamp.ts';
import type { Store } from '../../../src/store/store.ts';
import { Authority } from '../../journal/stamp-authority.ts';
import { value } from './machine.ts';

let office: Authority | null = null;
let folder: string | null = null;

/** The outside authority of the story. */
export function timeOffice(): Authority {
  office ??= new Authority(inFolder(), { name: 'Invented Time Office', key: 'rsa' });
  return office;
}

function inFolder(): string {
  folder ??= mkdtempSync(join(tmpdir(), 'time-office-'));
  return folder;
}

/** Takes its files off the disk. */
export function closeTimeOffice(): void {
  if (folder !== null) rmSync(folder, { recursive: true });
  folder = null;
  office = null;
}

/** A stamp of an outside authority, of a head as it was noted. */
export async function stamped(store: Store, noted: string): Promise<void> {
  const [head] = value(readNoted(noted)).heads;
  if (head === undefined) throw new Error('nothing was noted');
  value(await takeStamp(store, timeOffice().answer(await stampRequest(head))));
}

/** Other stamps than the true one of a head, by what is odd about them, in base 64. */
export async function otherStamps(noted: string): Promise<Record<string, string>> {
  const [device, sequence, hash] = noted.split(':');
  const head = chainHeadSchema.parse({ device, sequence: Number(sequence), hash });
  const own = new Authority(inFolder(), { name: 'Office of the Forger', key: 'ec' });
  const token = (answer: Uint8Array<ArrayBuffer>) => value(tokenOfAnswer(answer));
  const right = token(timeOffice().answer(await stampRequest(head)));
  return {
    'of another head': toBase64(
      token(timeOffice().answer(await stampRequest({ ...head, sequence: head.sequence + 1 }))),
    ),
    'of an authority of the attacker’s own': toBase64(token(own.answer(await stampRequest(head)))),
    'of a certificate that is not for stamps': toBase64(timeOffice().signedForMail(right)),
    'of a weaker hash': toBase64(token(timeOffice().answer(timeOffice().weakRequest(noted)))),
    'refused by the authority': toBase64(timeOffice().refusal(noted)),
  };
}
