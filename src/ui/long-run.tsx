import { keptState } from './kept-state.ts';
import './long-run.css';

/** Something that takes long, and goes on whatever screen is shown. */
export interface LongRun {
  /** What it does: "Saving lots.csv". */
  readonly label: string;
  /** From 0 to 1. */
  readonly share: number;
  /** How far it is, where that is told in words: "250 of 1,000". */
  readonly words?: string;
  readonly stop: () => void;
}

interface Placed extends LongRun {
  /** Where it was started, and where its result will stand. */
  readonly hash: string;
}

const current = keptState<Placed | null>(null);

/** Shows how far it is above every other screen; null when it has ended. */
export const showLongRun = (run: Placed | null): void => current.set(run);

/** What is under way, above the screens other than its own. */
export function LongRunNote({ hash }: { readonly hash: string }) {
  const run = current.use();
  if (run === null || run.hash === hash) return null;
  return (
    <div class="long-run-note no-print">
      <RunBar run={run} />
      <a href={run.hash}>Show it</a>
    </div>
  );
}

/** A bar, how far it is, and Stop. */
export function RunBar({ run }: { readonly run: LongRun }) {
  const { label, share, words = `${Math.floor(share * 100)}%`, stop } = run;
  return (
    <div class="run-bar" aria-busy="true">
      <p>{label}</p>
      <progress value={share} max={1} aria-label={label} />
      <p role="status" class="run-share">
        {words}
      </p>
      <button type="button" onClick={stop}>
        Stop
      </button>
    </div>
  );
}
