import { timeOfId } from '../sortable-id.ts';
import type { PackHead } from './pack-format.ts';
import { linkName, type PackLink } from './pack-links.ts';

/** What is wrong with the chains of a pack, a sentence each: every line by itself, each after the one before, and their ends. */
export function checkChains(links: readonly PackLink[], { heads }: PackHead): string[] {
  return [...checkEach(links), ...checkOrder(links), ...checkEnds(links, heads)];
}

function checkEach(links: readonly PackLink[]): string[] {
  const findings: string[] = [];
  let salted = false;
  for (const link of links) {
    const name = linkName(link);
    if (link.again === undefined) findings.push(`${name}: the row that is shown can’t be one of this batch.`);
    else if (link.again !== null && link.again !== link.hash)
      findings.push(`${name} was changed after it was written.`);
    if ((link.sequence === 1) !== (link.previous === ''))
      findings.push(`${name} says that ${link.previous === '' ? 'nothing' : 'another'} came before it.`);
    if (link.at !== null && link.at > timeOfId(link.id))
      findings.push(`${name} gives a later time than its own id, which no device writes.`);
    // Nothing binds what stands before a line whose hash is taken on trust; so there is none where salts are known.
    if (salted && !link.salted)
      findings.push(`${name} has no salt, though entries before it have: it can’t be one of the earliest entries.`);
    salted ||= link.salted;
  }
  return findings;
}

function checkOrder(links: readonly PackLink[]): string[] {
  const findings: string[] = [];
  const last = new Map<string, PackLink>();
  let lastId = '';
  for (const link of links) {
    const name = linkName(link);
    if (link.id <= lastId) findings.push(`${name} is out of order.`);
    lastId = link.id;
    const before = last.get(link.device);
    if (before !== undefined && link.sequence !== before.sequence + 1)
      findings.push(`${name} follows number ${before.sequence}: something between is missing, or was inserted.`);
    else if (before !== undefined && link.previous !== before.hash)
      findings.push(`${name} does not follow number ${before.sequence}: one of them was replaced.`);
    last.set(link.device, link);
  }
  return findings;
}

function checkEnds(links: readonly PackLink[], heads: PackHead['heads']): string[] {
  const findings: string[] = [];
  const ends = new Map(links.map((link) => [link.device, link]));
  const named = new Set<string>();
  for (const { device, sequence, hash } of heads) {
    const end = ends.get(device);
    if (end?.sequence !== sequence || end.hash !== hash)
      findings.push(
        `The chain of device ${device} does not end with entry number ${sequence}, as the first line says.`,
      );
    if (named.has(device)) findings.push(`Device ${device} is named twice in the first line.`);
    named.add(device);
  }
  for (const device of ends.keys())
    if (!named.has(device)) findings.push(`Device ${device} is not named in the first line.`);
  return findings;
}
