import { type ChainHead, chainHeads } from '../../journal/chain-head.ts';
import { checkNoted, linksByDevice, type NotedFound } from '../../journal/check-noted.ts';
import { NOTHING_NOTED, type Noted } from '../../journal/noted.ts';
import { readEntry } from '../../journal/read-entry.ts';
import { type ChainFinding, type ChainLink, checkLinks, linkOf } from '../../journal/verify-chain.ts';
import { checkFiles, type FilesCheck } from '../attachments/check-files.ts';
import type { Session } from '../write/session.ts';
import { eachEntry } from './each-entry.ts';

/** The result of looking at every entry. */
export interface JournalCheck {
  readonly entries: number;
  readonly heads: readonly ChainHead[];
  /** What is wrong with the chains; empty when nothing is. */
  readonly findings: readonly ChainFinding[];
  /** A sentence for each entry that is damaged beyond its place in a chain. */
  readonly unreadable: readonly string[];
  /** The attached files, each held against its hash. */
  readonly attachments: FilesCheck;
  /** What each fingerprint that was noted earlier says. */
  readonly noted: readonly NotedFound[];
}

/** Reads the whole journal and checks every hash and every chain. What that proves is said at verifyChain. */
export async function checkJournal(session: Session, noted: Noted = NOTHING_NOTED): Promise<JournalCheck> {
  const links: ChainLink[] = [];
  const unreadable: string[] = [];
  let entries = 0;
  await session.connection.read((tx) =>
    eachEntry(tx, (raw) => {
      entries += 1;
      const read = readEntry(raw);
      if (read.as === 'unreadable') unreadable.push(`Entry ${raw.id} cannot be read: ${read.message}.`);
      else links.push(linkOf(read.raw));
    }),
  );
  const attachments = await checkFiles(session);
  const byDevice = linksByDevice([...links].sort((a, b) => a.sequence - b.sequence));
  return {
    entries,
    heads: chainHeads(links),
    findings: checkLinks(links),
    unreadable,
    attachments,
    noted: noted.heads.map((head) => checkNoted(head, byDevice.get(head.device))),
  };
}
