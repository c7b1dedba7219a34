import type { LotId } from '../../domain/lot/lot.ts';
import { type Outcome, ok, refuse } from '../../domain/outcome.ts';
import { checkNoted, linksByDevice, type NotedFound } from '../check-noted.ts';
import { checkSignatures, type SignerFound } from '../check-signatures.ts';
import { hashOfText } from '../entry-hash.ts';
import { NOTHING_NOTED, type Noted } from '../noted.ts';
import { firstIssue } from '../read-entry.ts';
import { checkStamps, type StampSeen } from '../stamp/check-stamps.ts';
import { valueOfLine } from '../strict-json.ts';
import { checkChains } from './check-chains.ts';
import { checkFiles, type PackedFile } from './check-files.ts';
import { checkLot } from './check-lot.ts';
import { checkWitness } from './check-witness.ts';
import { type OpenedPack, openPack, PACK_TAIL } from './open-pack.ts';
import {
  anyPackHeadSchema,
  PACK_VERSION,
  type PackHead,
  type PackLine,
  packHeadSchema,
  packSealSchema,
} from './pack-format.ts';
import { linksOf, type PackLink } from './pack-links.ts';
import { readPackLines } from './read-lines.ts';

/** What a look at a pack found. */
export interface PackCheck {
  readonly head: PackHead;
  readonly counts: {
    /** Entries about the lot: shown (whole, or by their row of a batch), and held back. */
    readonly shown: number;
    readonly heldOfLot: number;
    /** Other lines of the chains, held back with a hash that can be made again, and held back on trust. */
    readonly held: number;
    readonly bare: number;
  };
  readonly chains: readonly ChainFound[];
  /** The lines of the data that can be read: what they say counts, since the page above them could say something else. */
  readonly lines: readonly PackLine[];
  /** The files that are right, by their SHA-256. */
  readonly files: ReadonlyMap<string, PackedFile>;
  readonly noted: readonly NotedFound[];
  readonly stamps: readonly StampSeen[];
  /** What a team's server and its devices say of what is in it, a sentence each, and no word more. */
  readonly witness: readonly string[];
  /** A sentence for everything that is wrong; empty when nothing was found. */
  readonly findings: readonly string[];
  /** A sentence for everything that a pack which fits has to own up to. */
  readonly told: readonly string[];
}

/** A device's chain in a pack. */
export interface ChainFound {
  readonly device: string;
  readonly first: number;
  readonly last: number;
  /** The lines whose hash is on trust: nothing before the last of them is bound to what follows. */
  readonly onTrust: readonly number[];
  readonly signer: SignerFound;
}

/**
 * Checks a pack by itself, and against what was noted elsewhere when it is given.
 * @param html the page as a text
 * @param noted for example from an older backup, or from a mail that was sent at the time
 */
export async function verifyPack(html: string, noted: Noted = NOTHING_NOTED): Promise<Outcome<PackCheck>> {
  const opened = openPack(html);
  if (!opened.ok) return opened;
  const [first, ...rest] = opened.value.lines;
  const head = readHead(first ?? '');
  if (!head.ok) return head;
  const { lines, findings: unread } = readPackLines(rest.slice(0, -1));
  const links = linksOf(lines);
  const lot = checkLot(lines, links, head.value);
  const files = checkFiles(lines, opened.value);
  const signers = await checkSignatures(head.value.heads, noted.keys);
  const byDevice = linksByDevice(links);
  const heads = noted.heads.map((one) => checkNoted(one, byDevice.get(one.device)));
  const stamps = await checkStamps(
    'stamps' in head.value ? (head.value.stamps ?? []) : [],
    (device, sequence) => byDevice.get(device)?.find((link) => link.sequence === sequence)?.hash,
  );
  const chains = chainsOf(links, signers);
  const witness = await checkWitness('witness' in head.value ? head.value.witness : undefined, links);
  return ok({
    head: head.value,
    counts: countsOf(links, head.value.lot),
    chains,
    lines,
    files: files.files,
    noted: heads,
    stamps: stamps.stamps,
    witness: witness.proved,
    findings: [
      ...unread,
      ...checkSeal(opened.value),
      ...checkChains(links, head.value),
      ...lot.findings,
      ...files.findings,
      ...signers.findings,
      ...stamps.findings,
      ...witness.findings,
      ...heads.flatMap(({ as, message }) => (as === 'broken' ? message : [])),
    ],
    told: [
      ...(head.value.version === PACK_VERSION ? [] : ['An earlier Headroom made this pack. It could not sign one.']),
      ...lot.told,
      ...files.told,
      ...chains.flatMap(toldOfChain),
      ...witness.told,
      ...(head.value.version === PACK_VERSION ? [...signers.told, ...stamps.told] : []),
      ...heads.flatMap(({ as, message }) => (as === 'not there' ? message : [])),
    ],
  });
}

function readHead(text: string): Outcome<PackHead> {
  const value = valueOfLine(text);
  const any = value.ok ? anyPackHeadSchema.safeParse(value.value) : null;
  if (any?.success === true && any.data.version > PACK_VERSION)
    return refuse('newer-version', 'A newer Headroom made this pack. Update Headroom, then check it.');
  if (!value.ok) return refuse('bad-head', `The first line of the data is damaged (${value.message}).`);
  const head = packHeadSchema.safeParse(value.value);
  return head.success
    ? ok(head.data)
    : refuse('bad-head', `The first line of the data is damaged (${firstIssue(head.error)}).`);
}

function checkSeal({ lines, page, after }: OpenedPack): string[] {
  const value = valueOfLine(lines.at(-1) ?? '');
  const seal = packSealSchema.safeParse(value.ok ? value.value : undefined);
  const tail = after === PACK_TAIL ? [] : ['Something was added to the file after the data, or its end was changed.'];
  if (!seal.success)
    return ['The seal at the end of the data is missing: the file is cut short, or was changed.', ...tail];
  const data = lines
    .slice(0, -1)
    .map((line) => `${line}\n`)
    .join('');
  return [
    ...(hashOfText(data) === seal.data.seal.data ? [] : ['The data was changed after it was sealed.']),
    ...(hashOfText(page) === seal.data.seal.page
      ? []
      : ['The readable part of the page was changed after it was sealed.']),
    ...tail,
  ];
}

function countsOf(links: readonly PackLink[], lot: LotId): PackCheck['counts'] {
  const count = (wanted: (link: PackLink) => boolean): number => links.filter(wanted).length;
  return {
    shown: count(({ form }) => form === 'entry' || form === 'batch'),
    heldOfLot: count(({ form, subject }) => form === 'held' && subject === `lot:${lot}`),
    held: count(({ form, subject }) => form === 'held' && subject !== `lot:${lot}`),
    bare: count(({ form }) => form === 'bare'),
  };
}

function chainsOf(links: readonly PackLink[], { signers }: { readonly signers: ReadonlyMap<string, SignerFound> }) {
  const chains = new Map<string, ChainFound>();
  for (const { device, sequence, form } of links) {
    const before = chains.get(device);
    chains.set(device, {
      device,
      first: before?.first ?? sequence,
      last: sequence,
      onTrust: [...(before?.onTrust ?? []), ...(form === 'bare' ? [sequence] : [])],
      signer: signers.get(device) ?? 'unsigned',
    });
  }
  return [...chains.values()];
}

function toldOfChain({ device, first, onTrust }: ChainFound): string[] {
  return [
    ...(first > 1
      ? [`Of device ${device} this file begins with number ${first}; what came before it is not in it.`]
      : []),
    ...(onTrust.length === 0
      ? []
      : [
          `On trust, since of the earliest kind: number ${onTrust.join(', ')} of device ${device}. Nothing binds number ${first} to ${onTrust.at(-1)} to what follows.`,
        ]),
  ];
}
