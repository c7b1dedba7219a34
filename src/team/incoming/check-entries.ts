import { type Outcome, ok, type Refusal, refuse } from '../../domain/outcome.ts';
import { canonicalJson } from '../../journal/canonical-json.ts';
import type { DeviceId } from '../../journal/ids.ts';
import { type Envelope, readEntry } from '../../journal/read-entry.ts';
import { type ChainEnd, checkLinks, linkOf } from '../../journal/verify-chain.ts';

/** What is here of a chain. */
export interface Here {
  endOf(device: DeviceId): Promise<ChainEnd | null>;
  entryAt(device: DeviceId, sequence: number): Promise<Envelope | null>;
}

/**
 * The entries of a message that are not here yet: each an entry of the journal (of a newer Headroom too), all of one device,
 * those that are here the very same, and the rest going on where its chain ends here.
 */
export async function checkEntries(
  raws: readonly unknown[],
  device: DeviceId,
  here: Here,
): Promise<Outcome<readonly Envelope[], Refusal>> {
  const entries: Envelope[] = [];
  for (const raw of raws) {
    const read = readEntry(raw);
    if (read.as === 'unreadable')
      return refuse('bad-entry', `It holds what is no entry of the journal (${read.message}).`);
    if (read.raw.device !== device)
      return refuse('other-device', `It holds an entry of device ${read.raw.device}, which only that device may send.`);
    entries.push(read.raw);
  }
  const end = await here.endOf(device);
  const known = end?.sequence ?? 0;
  const fresh = entries.filter(({ sequence }) => sequence > known);
  for (const entry of entries) {
    if (entry.sequence > known) continue;
    const same = await here.entryAt(device, entry.sequence);
    if (same === null || canonicalJson(same) !== canonicalJson(entry)) return forked(entry);
  }
  const [finding] = checkLinks(fresh.map(linkOf), new Map(end === null ? [] : [[device, end]]));
  if (finding?.fault === 'missing')
    return refuse('missing', `${finding.message} The server held back what came before, or mixed up the order.`);
  return finding === undefined ? ok(fresh) : refuse(finding.fault, finding.message);
}

function forked({ sequence, device }: Envelope): { readonly ok: false } & Refusal {
  return refuse(
    'forked',
    `Here another entry is number ${sequence} of device ${device}: one of the two was changed after it was written, or a browser profile was copied and both copies were used.`,
  );
}
