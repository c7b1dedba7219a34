/** Prints what the corrections are worth: in invented markets, and in invented stores whose figures are wrong in known ways. */
import { CORRECTION_IDS } from '../../src/domain/correction/corrections.ts';
import { type CorrectionEvidence, evidenceOf } from '../../src/domain/learn/corrections/evidence.ts';
import { findingOf } from '../../src/domain/learn/corrections/finding.ts';
import { replayOf } from '../../src/domain/learn/corrections/replay.ts';
import { retailLevel } from '../../src/domain/learn/corrections/retail-error.ts';
import { instant } from '../../src/domain/time/instant.ts';
import { DAY } from '../../src/domain/time/units.ts';
import { type Biases, type InventedStore, inventedStore } from './invented-store.ts';
import { WIN_WORLDS, WINS, worldGap } from './win-worlds.ts';

/** How much is drawn: the whole for the documents, a short sample for a test. */
export interface LearnSample {
  readonly logs: number;
  readonly lots: number;
  readonly stores: number;
  readonly perWeek: number;
}

const WHOLE: LearnSample = { logs: 400, lots: 40_000, stores: 100, perWeek: 6 };

/** The biases that are put into a store, and under which figure each is to be found. */
export const PLANTED: readonly {
  readonly id: (typeof CORRECTION_IDS)[number];
  readonly label: string;
  readonly bias: Biases;
  readonly truth: number;
}[] = [
  { id: 'retailLevel', label: 'Sold, against what was expected', bias: { retail: 0.95 }, truth: 0.95 },
  { id: 'retailSpread', label: 'Range, against the one expected', bias: { spread: 1.5 }, truth: 1.5 },
  { id: 'recon', label: 'Body', bias: { recon: { Body: 1.4 } }, truth: 1.4 },
  { id: 'days', label: 'Half sell within', bias: { median: 70 }, truth: 70 },
  { id: 'canceled', label: 'Canceled, of all wins', bias: { canceled: 0.12 }, truth: 0.12 },
  { id: 'slopes', label: '10,000 more miles', bias: { miles: 0.06 }, truth: 0.06 },
  { id: 'slopes', label: 'One year older', bias: { years: 0.14 }, truth: 0.14 },
  { id: 'asking', label: 'Sold, of what was asked', bias: { asking: 0.94 }, truth: 0.94 },
];

export async function sayLearn(): Promise<void> {
  sayGaps(WHOLE);
  sayRetail(WHOLE);
  sayStores(WHOLE);
  sayTimes();
}

function sayGaps({ logs, lots }: LearnSample): void {
  console.log(
    'How much of the profit between bidding by the estimate and the best fixed haircut the win correction brings:\n',
  );
  console.log(`| market | by the estimate | best | ${WINS.map((wins) => `${wins} wins`).join(' | ')} |`);
  console.log(`| - | -: | -: | ${WINS.map(() => '-:').join(' | ')} |`);
  for (const world of WIN_WORLDS) {
    const { naive, best, closed } = worldGap(world, { logs, lots, seed: 5 });
    const percent = (share: number) => `${(share * 100).toFixed(2)}%`;
    console.log(
      `| ${world.name} | ${percent(naive)} | ${percent(best)} | ${closed.map((one) => one.toFixed(2)).join(' | ')} |`,
    );
  }
}

/** Root mean square of the error of retail, as shares, over the cars of the second year, each corrected by what was known at its sale. */
export function retailErrors({ perWeek }: Pick<LearnSample, 'perWeek'>, retail: number, seed: number) {
  const store = inventedStore({ retail }, seed, perWeek);
  const { evidence } = learntFrom(store);
  const later = evidence.retail.slice(Math.floor(evidence.retail.length / 2));
  const rms = (of: (one: (typeof later)[number]) => number) =>
    Math.sqrt(later.reduce((sum, one) => sum + of(one) ** 2, 0) / later.length);
  return {
    without: rms(({ actual, expected }) => actual / expected - 1),
    with: rms(({ actual, expected, on }) => {
      // Two months before it sold it was still to be bid on: nothing that came since is used.
      const known = retailLevel(evidence.retail, instant(Math.max(0, (on ?? 0) - 60 * DAY)));
      return actual / (expected * known.value) - 1;
    }),
  };
}

function sayRetail(sample: LearnSample): void {
  console.log('\nRoot mean square error of retail, second year, by how much too high the estimates are:\n');
  console.log('| cars bring, of the estimate | without | with |\n| -: | -: | -: |');
  for (const retail of [1, 0.97, 0.94, 0.9]) {
    const errors = retailErrors(sample, retail, 11);
    console.log(
      `| ${retail.toFixed(2)} | ${(errors.without * 100).toFixed(2)}% | ${(errors.with * 100).toFixed(2)}% |`,
    );
  }
}

function learntFrom(store: InventedStore): { readonly evidence: CorrectionEvidence; readonly store: InventedStore } {
  return { store, evidence: evidenceOf(store.lots, [], store.now) };
}

/** What is clear in a store. */
export function clearIn(biases: Biases, seed: number, perWeek: number): readonly string[] {
  const { evidence, store } = learntFrom(inventedStore(biases, seed, perWeek));
  return CORRECTION_IDS.filter((id) => findingOf(id, { evidence, setup: store.setup, now: store.now }).clear);
}

function sayStores({ stores, perWeek }: LearnSample): void {
  console.log('\nStores of two years with one thing wrong, ten each:\n');
  console.log('| what is wrong | truth | found clear | right side | range holds it |\n| - | -: | -: | -: | -: |');
  for (const { id, label, bias, truth } of PLANTED) {
    const counts = { clear: 0, side: 0, holds: 0 };
    for (let seed = 1; seed <= 10; seed++) {
      const { evidence, store } = learntFrom(inventedStore(bias, seed, perWeek * 2));
      const figure = findingOf(id, { evidence, setup: store.setup, now: store.now }).figures.find(
        (one) => one.label === label,
      );
      if (figure === undefined) continue;
      const { learned, without } = figure;
      counts.clear += Number(learned.clear);
      counts.side += Number(Math.sign(learned.value - without) === Math.sign(truth - without));
      counts.holds += Number(learned.low <= truth && truth <= learned.high);
    }
    console.log(`| ${label} | ${truth} | ${counts.clear} | ${counts.side} | ${counts.holds} |`);
  }
  const found = Array.from({ length: stores }, (_, i) => clearIn({}, 1000 + i, perWeek));
  const without = found.filter((ids) => ids.length === 0).length;
  console.log(
    `\nOf ${stores} stores without any bias, nothing is called clear in ${without}. Called clear: ${found.flat().join(', ') || 'nothing'}.`,
  );
}

function sayTimes(): void {
  const { evidence, store } = learntFrom(inventedStore({ error: 0.06 }, 2, 69));
  const begun = performance.now();
  for (const id of CORRECTION_IDS) findingOf(id, { evidence, setup: store.setup, now: store.now });
  const found = performance.now();
  const work = replayOf(store.lots, evidence, ['win']);
  while (!work.next().done);
  const done = performance.now();
  console.log(
    `\n${store.lots.length} lots in two years: all findings in ${Math.round(found - begun)} ms, a replay in ${Math.round(done - found)} ms, in pieces of one lot.`,
  );
}
