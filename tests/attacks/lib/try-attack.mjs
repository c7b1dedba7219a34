import { readFileSync } from 'node:fs';
import { NotApplicable } from './case.mjs';
import { judge, outcomeOf, wordsWrong } from './judge.mjs';
import { alteredFiles, notedFor, sampleOf } from './run-attack.mjs';

const read = (name) => JSON.parse(readFileSync(new URL(`../${name}`, import.meta.url), 'utf8'));
/** Honest files that must not be found wanting, then every alteration. */
export const TABLE = [...read('controls.json'), ...read('attacks.json')];
const claims = read('claims.json');

/**
 * One row of the table against a checker: alone, with a noted fingerprint, and beside the journal it came from.
 * @param options.samples honest files
 * @param options.honest what the checker made of them, kept from row to row
 * @param options.most how many variants of a row are tried, evenly out of all
 * @param options.eachSide also with a noted fingerprint what is found or refused without one
 */
export async function tryAttack(attack, checker, { samples, honest, most, eachSide }) {
  const check = attack.target === 'pack' ? checker.checkPack : checker.checkBackup;
  if (check === undefined) return null;
  const honestBytes = Buffer.from(samples.text(sampleOf(attack)), 'utf8');
  let files;
  try {
    files = alteredFiles(attack, samples, most);
  } catch (error) {
    if (error instanceof NotApplicable) return { id: attack.id, what: attack.what, skipped: error.message, sides: [] };
    throw error;
  }
  const noted = notedFor(attack, samples);
  const { checkBackupBesideJournal: beside } = checker;
  const own = Buffer.from(samples.text('backup-plain.jsonl'), 'utf8');
  const sides = [
    { name: 'alone', expectation: attack.alone, run: (bytes) => check(bytes, undefined) },
    { name: 'noted', expectation: attack.withNotedFingerprint, run: (bytes) => check(bytes, noted) },
    { name: 'beside', expectation: beside && attack.besideOwnJournal, run: (bytes) => beside(bytes, own) },
  ].filter(({ expectation }) => expectation !== undefined);
  const tried = [];
  for (const side of sides) {
    const done = tried[0]?.verdict === 'ok' && (tried[0].outcome === 'found' || tried[0].outcome === 'refused');
    if (side.name === 'noted' && done && files.length === 1 && !eachSide) continue;
    tried.push(await trySide(attack, side, { files, honestBytes, honest, noted, checker }));
  }
  return { id: attack.id, what: attack.what, sides: tried };
}

async function trySide(attack, { name, expectation, run }, { files, honestBytes, honest, noted, checker }) {
  const key = `${checker.name} ${sampleOf(attack)} ${name} ${name === 'noted' ? noted : ''}`;
  if (!honest.has(key)) honest.set(key, await run(honestBytes));
  const all = [];
  for (const { label, bytes } of files) {
    const result = await run(bytes);
    const outcome = outcomeOf(result, attack.how === 'asItIs' ? {} : honest.get(key));
    const words = wordsWrong(result, attack, claims, name);
    all.push({ label, outcome, words, verdict: words === null ? judge(expectation, outcome, attack) : 'MISSED' });
  }
  const worst =
    all.find(({ verdict }) => verdict === 'MISSED') ?? all.find(({ verdict }) => verdict !== 'ok') ?? all[0];
  return { name, expectation, ...worst };
}
