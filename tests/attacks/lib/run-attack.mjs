import { createHash } from 'node:crypto';
import { ATTACKS } from '../attacks.mjs';
import { openCase } from './case.mjs';
import { notedText } from './noted.mjs';
import { tools } from './tools.mjs';

const DEFAULT_SAMPLE = { pack: 'pack-single-everything.html', backup: 'backup-plain.jsonl' };

export const sampleOf = (attack) => attack.sample ?? DEFAULT_SAMPLE[attack.target];

/** The altered files of an attack, at most so many, evenly out of all, each with a label. @throws NotApplicable */
export function alteredFiles(attack, samples, most) {
  const it = caseOf(attack, samples);
  const made = ATTACKS.get(attack.how)(it, attack.with ?? {});
  const variants = Array.isArray(made) ? made : [{ label: '', file: made }];
  return some(variants, most).map(({ label, file }) => ({ label, bytes: Buffer.from(file, 'utf8') }));
}

function caseOf(attack, samples) {
  const name = sampleOf(attack);
  return openCase({
    target: attack.target,
    text: samples.text(name),
    about: samples.about[name],
    tools,
    other: samples.text,
    page: attack.page,
    random: seeded(attack.id),
  });
}

export function notedFor(attack, samples) {
  const name = sampleOf(attack);
  return notedText({
    about: samples.about[name],
    head: attack.notedHead ?? 'buyer-last',
    how: attack.notedHow,
    sampleText: samples.text(name),
    other: samples.text,
  });
}

/** Bytes that are the same in every run. */
function seeded(seed) {
  let drawn = 0;
  return (wanted) => {
    const blocks = [];
    for (let have = 0; have < wanted; have += 32)
      blocks.push(createHash('sha256').update(`${seed} ${drawn++}`).digest());
    return Buffer.concat(blocks).subarray(0, wanted);
  };
}

function some(files, most) {
  if (files.length <= most) return files;
  return Array.from({ length: most }, (_, i) => files[Math.floor(((i + 0.5) * files.length) / most)]);
}
