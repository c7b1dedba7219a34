const OUTCOMES = ['found', 'refused', 'told', 'own account', 'passes'];

/**
 * What a checker made of a file, beside what it made of the honest sample under the same fingerprint.
 * - `found`: it names a break; `refused`: it doesn't take the file.
 * - `told`: it passes, and owns up to something that it does not say of the honest sample.
 * - `own account`: it passes, and what it shows of the data is, letter for letter, what it shows of the honest sample: the
 *   alteration changes nothing of what the reader is told.
 * - `passes`: it passes, and says nothing of it.
 */
export function outcomeOf(result, honest) {
  if (result.verdict === 'refused') return 'refused';
  if (result.verdict === 'broken' || (result.findings ?? []).length > 0) return 'found';
  const known = new Set(honest?.told ?? []);
  if ((result.told ?? []).some((sentence) => !known.has(sentence))) return 'told';
  if (result.account && result.account === honest?.account) return 'own account';
  return 'passes';
}

/** Which outcomes an expectation takes. */
export function accepted(expectation, { alsoFine = [] } = {}) {
  if (expectation.startsWith('not findable')) return new Set(['passes', 'told', 'own account', ...alsoFine]);
  return new Set([...OUTCOMES.filter((outcome) => expectation.includes(outcome)), ...alsoFine]);
}

/**
 * @returns ok, or what is wrong: `MISSED` when less came out than was expected; `more than expected` when a break was named
 * where nobody could know one: look at why, it may be a false alarm or a better checker
 */
export function judge(expectation, outcome, attack) {
  const takes = accepted(expectation, attack);
  if (takes.has(outcome)) return 'ok';
  const strong = outcome === 'found' || outcome === 'refused';
  if (strong && (takes.has('found') || takes.has('refused'))) return 'ok';
  if (strong && !attack.exact) return expectation.startsWith('not findable') ? 'more than expected' : 'ok';
  return 'MISSED';
}

/** Words that a verdict must hold (`says` of an attack), and claims that none may make. */
export function wordsWrong(result, attack, claims, held) {
  const words = [result.said, ...(result.findings ?? []), ...(result.told ?? [])].join('\n');
  if (attack.says && !new RegExp(attack.says, 'i').test(words)) return `says nothing of ${attack.says}`;
  if (result.verdict !== 'passes') return null;
  const made = claims.find(
    ({ patterns, when }) =>
      (when === undefined || when === held) && patterns.some((pattern) => isClaimed(result.said ?? '', pattern)),
  );
  return made ? `claims what it must not (${made.id}: ${made.claim})` : null;
}

const DENIED = /\b(?:not|cannot|neither|nor|never|unless|whether|without)\b|n[’']t\b/i;

/** Whether a sentence says it, and does not say that it can't be said. */
function isClaimed(text, pattern) {
  return text.split(/(?<=[.!?:;])\s+/).some((sentence) => {
    const words = new RegExp(pattern, 'i').exec(sentence)?.[0];
    return words !== undefined && !DENIED.test(sentence.replace(words, ''));
  });
}
