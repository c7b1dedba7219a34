import type { LotId } from '../../domain/lot/lot.ts';
import type { PackShows } from '../../journal/happenings/row.ts';
import type { DeviceId } from '../../journal/ids.ts';
import type { PackHead, PackLine } from '../../journal/pack/pack-format.ts';
import { PACK_FORMAT, PACK_VERSION } from '../../journal/pack/pack-format.ts';
import { isAbout, packLineOf } from '../../journal/pack/pack-lines.ts';
import { showsUnder } from '../../views/history/pack-choice.ts';
import { readWithSignedHeads } from '../signing/signed-heads.ts';
import { stampsIn } from '../signing/stamps.ts';
import { witnessOf } from '../signing/witness-of.ts';
import type { Session } from '../write/session.ts';
import { eachEntry } from './each-entry.ts';

/** The data of an evidence pack for one lot, without the files. */
export interface Evidence {
  readonly head: PackHead;
  readonly lines: readonly PackLine[];
}

/**
 * The chain of every device that wrote about a lot, from its first such entry to its last of all: what follows binds what
 * went before. Null when the lot is not here.
 * @param shows how much of what is about the lot is shown; what is not about it is held back always
 */
export function evidenceOf(session: Session, lot: LotId, shows: PackShows): Promise<Evidence | null> {
  return readWithSignedHeads(session, async (tx, signedHeads) => {
    const state = await tx.objectStore('lots').get(lot);
    if (state === undefined) return null;
    const choice = { lot, bornIn: state.bornIn, shows: showsUnder(shows) };
    const begun = new Set<string>();
    const lines: PackLine[] = [];
    const about = new Map<DeviceId, { first: number; last: number }>();
    const hashes = new Set<string>();
    await eachEntry(tx, (raw) => {
      if (isAbout(raw, choice)) {
        begun.add(raw.device);
        about.set(raw.device, { first: about.get(raw.device)?.first ?? raw.sequence, last: raw.sequence });
      }
      if (!begun.has(raw.device)) return;
      hashes.add(raw.hash);
      lines.push(packLineOf(raw, choice));
    });
    const heads = (await signedHeads(tx)).filter(({ device }) => begun.has(device));
    const stamps = (await stampsIn(tx)).filter(({ hash }) => hashes.has(hash));
    const witness = await witnessOf(tx, about);
    const head: PackHead = {
      format: PACK_FORMAT,
      version: PACK_VERSION,
      madeAt: session.now(),
      lot,
      shows,
      heads: [...heads],
      ...(stamps.length > 0 && { stamps }),
      ...(witness !== null && { witness }),
    };
    return { head, lines };
  });
}
