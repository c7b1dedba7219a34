import { groupBy } from '../../src/domain/group-by.ts';

/** What became of one mutant. */
export interface Tried {
  readonly file: string;
  /** From 1. */
  readonly line: number;
  /** From 1. */
  readonly column: number;
  /** What stood there, in one line. */
  readonly was: string;
  /** What stood there instead, in one line. */
  readonly is: string;
  /** `neither` could not be run, and counts for nothing. */
  readonly outcome: 'killed' | 'survived' | 'neither';
}

/** The share of mutants that some test failed on, from 0 to 1; null when none could be tried. */
export function scoreOf(tried: readonly Tried[]): number | null {
  const killed = tried.filter(({ outcome }) => outcome === 'killed').length;
  const counted = tried.filter(({ outcome }) => outcome !== 'neither').length;
  return counted === 0 ? null : killed / counted;
}

/** The score of each folder and of all, then each survivor with the change that nobody noticed. */
export function sayMutants(tried: readonly Tried[]): string {
  const folders = [...groupBy(tried, ({ file }) => file.split('/').slice(0, 3).join('/'))];
  const rows = folders.sort(([a], [b]) => a.localeCompare(b)).map(([folder, own]) => row(folder, own));
  const survivors = tried
    .filter(({ outcome }) => outcome === 'survived')
    .map(({ file, line, column, was, is }) => `${file}:${line}:${column}\n    was ${was}\n    is  ${is}`);
  return [...rows, row('all', tried), ...survivors].join('\n');
}

function row(name: string, tried: readonly Tried[]): string {
  const count = (wanted: Tried['outcome']) => tried.filter(({ outcome }) => outcome === wanted).length;
  const score = scoreOf(tried);
  const percent = score === null ? '  –' : `${Math.round(score * 100)}%`.padStart(4);
  return `${name.padEnd(32)} ${percent}  ${count('killed')} killed, ${count('survived')} survived, ${count('neither')} not run`;
}
