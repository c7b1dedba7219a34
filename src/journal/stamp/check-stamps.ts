import type { StampFound } from './check-stamp.ts';
import type { Stamp } from './stamp-format.ts';

/** A stamp whose word holds: its head was there before that time, as the authority says. */
export interface StampSeen {
  readonly device: string;
  readonly sequence: number;
  readonly at: number;
  readonly authority: string;
  readonly issuer: string;
}

interface StampsFound {
  readonly stamps: readonly StampSeen[];
  readonly findings: readonly string[];
  readonly told: readonly string[];
}

/** Checks the stamps of a file, each against the entry of the file that it is said to be of. */
export async function checkStamps(
  stamps: readonly Stamp[],
  hashOf: (device: string, sequence: number) => string | undefined,
): Promise<StampsFound> {
  const seen: StampSeen[] = [];
  const findings: string[] = [];
  const told: string[] = [];
  for (const stamp of stamps) {
    const { device, sequence, hash } = stamp;
    const name = `The time stamp of entry number ${sequence} of device ${device}`;
    const there = hashOf(device, sequence) === hash;
    const found = there ? await check(stamp) : null;
    if (found === null) findings.push(`${name} is of an entry that is not in this file.`);
    else if (found.as === 'bad') findings.push(`${name} does not hold: ${found.message}.`);
    else if (found.as === 'unknown') told.push(`${name} says nothing here: ${found.message}.`);
    else seen.push({ device, sequence, at: found.at, authority: found.authority, issuer: found.issuer });
  }
  if (stamps.length === 0) told.push('No outside authority has put a time stamp on anything in it.');
  return { stamps: seen, findings, told };
}

/** What reads an authority's answer is large, and is fetched only where there is one. */
async function check(stamp: Stamp): Promise<StampFound> {
  const { checkStamp } = await import('./check-stamp.ts');
  return checkStamp(stamp);
}

/** What a stamp shows, and no word more. */
export function sayStamp({ device, sequence, at, authority, issuer }: StampSeen): string {
  const time = new Date(at).toISOString().replace('T', ' ').replace('.000Z', ' UTC');
  return `Number ${sequence} of device ${device} was there before ${time}, by the word of ${authority}, whose certificate names ${issuer} as its maker. Whether to trust that authority is for you to say.`;
}
