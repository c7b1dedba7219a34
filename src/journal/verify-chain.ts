import { groupBy } from '../domain/group-by.ts';
import { entryHash } from './entry-hash.ts';
import type { DeviceId, EntryId } from './ids.ts';
import type { Envelope } from './read-entry.ts';
import { timeOfId } from './sortable-id.ts';

/** What the check needs of an entry: its place in a chain, and whether its hash is that of its content. */
export interface ChainLink {
  readonly id: EntryId;
  readonly device: DeviceId;
  readonly sequence: number;
  readonly previous: string;
  readonly hash: string;
  readonly intact: boolean;
  /** Whether it gives a later time than its own id, which no device writes. */
  readonly late: boolean;
}

/**
 * - `changed`: the content does not match the hash;
 * - `late`: it gives a later time than its own id;
 * - `missing`: numbers between are not there;
 * - `reordered`: it stands behind an entry with a later number;
 * - `wrong-previous`: it does not follow the entry before it, which was replaced, or it was put in here;
 * - `other-chain`: it follows an entry of another device;
 * - `twice`: an id occurs twice;
 * - `forked`: two entries claim the same number.
 */
export type ChainFault =
  | 'changed'
  | 'late'
  | 'missing'
  | 'reordered'
  | 'wrong-previous'
  | 'other-chain'
  | 'twice'
  | 'forked';

export interface ChainFinding {
  readonly fault: ChainFault;
  readonly device: DeviceId;
  readonly sequence: number;
  readonly entry: EntryId;
  readonly message: string;
}

/**
 * Everything that is wrong with the chains of a whole journal, given in the order of its entries (by id).
 *
 * What this can show: that an entry was changed, taken out of the middle, put in, renumbered or moved to another device by
 * someone who did not also make every later hash of that device again. What it cannot: entries taken off the *end* of a
 * chain, and a chain that was made again from some entry on. Whoever can write the file can do either, since there is no
 * secret in a hash. For that, keep chainHeads (chain-head.ts) somewhere else and compare.
 */
export function verifyChain(entries: Iterable<Envelope>): ChainFinding[] {
  return checkLinks(Array.from(entries, linkOf));
}

export function linkOf(raw: Envelope): ChainLink {
  const { id, at, device, sequence, previous, hash } = raw;
  return { id, device, sequence, previous, hash, intact: entryHash(raw) === hash, late: at > timeOfId(id) };
}

/** Where a chain is known to stand: what comes next follows it. */
export type ChainEnd = Pick<ChainLink, 'sequence' | 'hash'>;
const FROM_THE_FIRST: ReadonlyMap<DeviceId, ChainEnd> = new Map();

/**
 * As verifyChain, for a journal too large to hold: the links are small.
 * @param after where the chains stand that the links go on from; those not in it begin with number 1
 */
export function checkLinks(links: readonly ChainLink[], after = FROM_THE_FIRST): ChainFinding[] {
  const findings: ChainFinding[] = [];
  const find = (fault: ChainFault, { device, sequence, id }: ChainLink, message: string): void => {
    findings.push({ fault, device, sequence, entry: id, message });
  };
  const once = distinct(links, find);
  const deviceOfHash = new Map(once.map((link) => [link.hash, link.device]));
  for (const [device, chain] of byDevice(once)) checkOneChain(chain, after.get(device) ?? null, deviceOfHash, find);
  return findings;
}

type Find = (fault: ChainFault, link: ChainLink, message: string) => void;

function distinct(links: readonly ChainLink[], find: Find): ChainLink[] {
  const ids = new Set<EntryId>();
  return links.filter((link) => {
    if (ids.has(link.id)) find('twice', link, `${named(link)} occurs twice under the same id.`);
    return !ids.has(link.id) && ids.add(link.id);
  });
}

const byDevice = (links: readonly ChainLink[]) => groupBy(links, ({ device }) => device);

function checkOneChain(
  chain: readonly ChainLink[],
  after: ChainEnd | null,
  deviceOfHash: ReadonlyMap<string, DeviceId>,
  find: Find,
): void {
  let furthest = 0;
  for (const link of chain) {
    if (!link.intact) find('changed', link, `${named(link)} was changed after it was written.`);
    if (link.late) find('late', link, `${named(link)} gives a later time than its own id, which no device writes.`);
    if (link.sequence < furthest) find('reordered', link, `${named(link)} comes after number ${furthest}.`);
    furthest = Math.max(furthest, link.sequence);
  }
  let before: ChainEnd | null = after;
  for (const link of [...chain].sort((a, b) => a.sequence - b.sequence)) {
    const expected: number = (before?.sequence ?? 0) + 1;
    if (link.sequence === before?.sequence) {
      find('forked', link, `Two different entries claim to be number ${link.sequence} of device ${link.device}.`);
      continue;
    }
    if (link.sequence > expected) find('missing', link, missing(expected, link.sequence - 1, link.device));
    else if (link.previous !== (before?.hash ?? '')) findWrongPrevious(link, deviceOfHash, find);
    before = link;
  }
}

function findWrongPrevious(link: ChainLink, deviceOfHash: ReadonlyMap<string, DeviceId>, find: Find): void {
  const other = deviceOfHash.get(link.previous);
  if (other !== undefined && other !== link.device)
    find('other-chain', link, `${named(link)} continues the chain of device ${other}: it does not belong here.`);
  else
    find(
      'wrong-previous',
      link,
      link.sequence === 1
        ? `${named(link)} says that a different entry came before it.`
        : `${named(link)} does not follow number ${link.sequence - 1}: one of them was replaced or inserted.`,
    );
}

function named({ sequence, device }: ChainLink): string {
  return `Entry number ${sequence} of device ${device}`;
}

function missing(first: number, last: number, device: DeviceId): string {
  return first === last
    ? `Entry number ${first} of device ${device} is missing.`
    : `Entries number ${first} to ${last} of device ${device} are missing.`;
}
