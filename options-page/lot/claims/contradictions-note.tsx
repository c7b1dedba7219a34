import type { Contradiction } from '../../../src/domain/claims/contradictions.ts';

/** What cannot all be right, above everything else: a wrong car is a wrong number. */
export function ContradictionsNote({ contradictions }: { contradictions: readonly Contradiction[] }) {
  if (contradictions.length === 0) return null;
  return (
    <section class="note warning stack contradictions" aria-label="Contradictions">
      <h2>
        {contradictions.length === 1 ? 'The listing contradicts itself' : `${contradictions.length} contradictions`}
      </h2>
      <ul class="plain-list">
        {contradictions.map(({ kind, message }) => (
          <li key={kind + message}>{message}</li>
        ))}
      </ul>
    </section>
  );
}
