import { sayStamp } from '../../journal/stamp/check-stamps.ts';
import { countWords } from '../../views/words/count-words.ts';
import type { Backup } from './read-backup.ts';

/** What the check of a backup that was read whole has shown, a sentence each, and no word more. */
export function sayProvedOfBackup({ header, findings, files, noted, signers, stamps }: Backup): string[] {
  const { counts, heads } = header;
  return [
    `It holds what its first line counts: ${countWords(counts.entries, 'entry', 'entries')}, ${countWords(counts.lots, 'lot', 'lots')}.`,
    ...(files.size > 0
      ? [`With ${countWords(files.size, 'attached file', 'attached files')}, each of the bytes it is named by.`]
      : []),
    ...(findings.length === 0 && heads.length > 0
      ? ['Every entry has the fingerprint it states and follows the one before it, from the first of each device on.']
      : []),
    ...noted.flatMap(({ as, noted: { device, sequence } }) =>
      as === 'kept'
        ? [
            `The noted fingerprint is there: number 1 to ${sequence} of device ${device} are the entries of that time. It says nothing of later ones, nor of another device.`,
          ]
        : [],
    ),
    ...[...signers].flatMap(([device, signer]) => saySigner(device, signer)),
    ...stamps.map(sayStamp),
  ];
}

/** What no check of a backup can show, and what a rewrite of everything could still do: one sentence each. */
export const BACKUP_NOT_SHOWN: readonly string[] = [
  'Whoever holds the whole journal can write it anew from any entry on, and sign it in his own browser: only a fingerprint or a key that left his hands before shows that.',
  'It can’t show that this is the last backup, or that what was typed is true.',
];

function saySigner(device: string, signer: string): string[] {
  if (signer === 'known') return [`The end of device ${device} is signed with the key it was known by before.`];
  return signer === 'unknown key'
    ? [
        `The end of device ${device} is signed, but with a key that only this file names, which proves nothing by itself.`,
      ]
    : [];
}
