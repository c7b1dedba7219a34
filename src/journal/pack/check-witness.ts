import { linksByDevice } from '../check-noted.ts';
import { checkSignatureOf } from '../signed-head.ts';
import { type Sighting, type Stored, sightingText, type Witness } from '../witness.ts';
import type { PackLink } from './pack-links.ts';

interface WitnessFound {
  /** A sentence for each thing that was found right. */
  readonly proved: readonly string[];
  readonly findings: readonly string[];
  readonly told: readonly string[];
}

/** Milliseconds by which clocks differ before it is said. */
const CLOCKS_APART = 600_000;

/** Checks what others say of the chains of a pack, and says of each no more than it shows. */
export async function checkWitness(witness: Witness | undefined, links: readonly PackLink[]): Promise<WitnessFound> {
  const found: WitnessFound[] = [];
  const chains = linksByDevice(links);
  for (const device of new Set(witness?.stored.map((row) => row.device)))
    found.push(
      checkStored(
        device,
        (witness?.stored ?? []).filter((row) => row.device === device),
        chains.get(device) ?? [],
      ),
    );
  for (const sighting of witness?.sightings ?? []) found.push(await checkSighting(sighting, chains));
  return {
    proved: found.flatMap((one) => one.proved),
    findings: found.flatMap((one) => one.findings),
    told: found.flatMap((one) => one.told),
  };
}

function checkStored(device: string, rows: readonly Stored[], chain: readonly PackLink[]): WitnessFound {
  const [findings, told, times]: [string[], string[], string[]] = [[], [], []];
  let before: Stored | null = null;
  for (const row of [...rows].sort((a, b) => a.last - b.last)) {
    const there = chain.filter(({ sequence }) => sequence >= row.first && sequence <= row.last);
    if (row.first > row.last || there.length === 0 || (before !== null && row.first <= before.last))
      findings.push(
        `What the server is to have stored of device ${device} as message ${row.place} is not in this file.`,
      );
    if (before !== null && (row.place <= before.place || row.at < before.at))
      told.push(
        `The server’s order of device ${device} is not that of its numbers: it was restored from an older copy, or this list was changed.`,
      );
    if (there.some(({ at }) => at !== null && at - row.at > CLOCKS_APART))
      told.push(`Of device ${device}, message ${row.place} was stored before its clock says that it was written.`);
    times.push(
      `number ${row.first === row.last ? row.last : `${row.first} to ${row.last}`} at ${utc(row.at)} as message ${row.place}`,
    );
    before = row;
  }
  const proved = [
    `The team’s server said to the browser that made this pack that it had stored, of device ${device}, ${times.join('; ')}. Nobody signed that: it is the word of that server and that browser.`,
  ];
  return { proved, findings, told: [...new Set(told)] };
}

async function checkSighting(
  sighting: Sighting,
  chains: ReadonlyMap<string, readonly PackLink[]>,
): Promise<WitnessFound> {
  const { by, at, heads } = sighting;
  const [findings, kept]: [string[], string[]] = [[], []];
  const signature = await checkSignatureOf(sightingText(sighting), sighting);
  if (signature === 'bad')
    return { proved: [], findings: [`What device ${by} is to have seen does not fit its signature.`], told: [] };
  for (const { device, sequence, hash } of heads) {
    const chain = chains.get(device) ?? [];
    const there = chain.find((link) => link.sequence === sequence);
    if (there === undefined) continue;
    if (there.hash !== hash)
      findings.push(
        `Entry number ${sequence} of device ${device} is not the one that device ${by} had seen: the chain was rewritten.`,
      );
    else kept.push(`number ${spanTo(chain, sequence)} of device ${device}`);
  }
  if (signature === 'unknown')
    return { proved: [], findings, told: [`This browser can’t check what device ${by} signed that it had seen.`] };
  const proved =
    kept.length === 0
      ? []
      : [
          `Device ${by} signed that it had, by its clock at ${utc(at)}, ${kept.join(' and ')} as they are here. The key is one that only this file names: compare it with the team’s.`,
        ];
  return { proved, findings, told: [] };
}

/** What stands before a line on trust is not bound to what was seen. */
function spanTo(chain: readonly PackLink[], sequence: number): string {
  const bound = chain.filter((link) => link.sequence <= sequence);
  const onTrust = bound.filter(({ form }) => form === 'bare').at(-1);
  const first = onTrust?.sequence ?? bound[0]?.sequence ?? sequence;
  return first === sequence ? `${sequence}` : `${first} to ${sequence}`;
}

const utc = (at: number): string =>
  new Date(at)
    .toISOString()
    .replace('T', ' ')
    .replace(/\.\d+Z$/, ' UTC');
