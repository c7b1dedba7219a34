import { CorrectionsPart } from './corrections/corrections-part.tsx';

/** What the dealer's own results teach. Corrections read past lots by themselves, a few at a time, and wait for nothing else. */
export function LearnScreen(_: { part: string }) {
  return (
    <div class="stack loose learn">
      <CorrectionsPart />
    </div>
  );
}
