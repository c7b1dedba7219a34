import { sayStamp } from '../stamp/check-stamps.ts';
import type { ChainFound, PackCheck } from './verify-pack.ts';

/** What a check that found nothing wrong has shown, a sentence each, and no word more. Call it only where it found nothing. */
export function sayProved(check: PackCheck): string[] {
  const { counts, chains, files, noted, stamps } = check;
  return [
    `${count(counts.shown, 'entry', 'entries')} about this lot shown, ${counts.heldOfLot} held back; ${count(counts.held + counts.bare, 'line', 'lines')} of other matters, held back.`,
    `Every shown entry has the fingerprint it states, and every line follows the one before it: ${chains.map(span).join('; ')}.`,
    ...(files.size > 0 ? [`${count(files.size, 'file has', 'files have')} the bytes that an entry named.`] : []),
    ...noted.flatMap(({ noted: head, as }) => (as === 'kept' ? sayKept(head, chains) : [])),
    ...chains.flatMap(saySigner),
    ...stamps.map(sayStamp),
    ...check.witness,
  ];
}

/** What no check of a pack can show, and what a rewrite of everything could still do: one sentence each. */
export const NOT_SHOWN: readonly string[] = [
  'Whoever holds the whole journal can write it anew from any entry on, and sign it in his own browser: only a fingerprint or a key that left his hands before shows that.',
  'This can’t show what is not in the file, such as later lines or other devices, whether what was typed is true, whether the clock was right, or who sat there.',
];

const span = ({ device, first, last }: ChainFound): string => `device ${device}, number ${first} to ${last}`;

function sayKept(
  head: { readonly device: string; readonly sequence: number },
  chains: readonly ChainFound[],
): string[] {
  const chain = chains.find(({ device }) => device === head.device);
  if (chain === undefined) return [];
  // What stands before a line on trust is not bound to what was noted.
  const from = Math.max(chain.first, ...chain.onTrust.filter((number) => number <= head.sequence));
  return [
    `The noted fingerprint is there: number ${from} to ${head.sequence} of device ${head.device} are the lines of that time. It says nothing of later lines, nor of another device.`,
  ];
}

function saySigner({ device, last, signer }: ChainFound): string[] {
  if (signer === 'known') return [`Number ${last} of device ${device} is signed with the key it was known by before.`];
  return signer === 'unknown key'
    ? [
        `Number ${last} of device ${device} is signed, but with a key that only this file names, which proves nothing by itself.`,
      ]
    : [];
}

const count = (n: number, one: string, many: string): string => `${n.toLocaleString('en-US')} ${n === 1 ? one : many}`;
