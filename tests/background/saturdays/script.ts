import { readFileSync } from 'node:fs';

/** One lot of a written Saturday. Money in whole dollars, times in ISO 8601. */
export interface WrittenLot {
  readonly lot: string;
  readonly close: string;
  readonly maxBid: number;
  readonly proxy: number | null;
  /** When somebody noted which price. */
  readonly prices: readonly (readonly [at: string, dollars: number])[];
}

/** A Saturday that somebody wrote who had not read the code, and what he wants of it. All limits count from midnight. */
export interface WrittenSaturday {
  readonly id: string;
  readonly name: string;
  readonly lotSet: string;
  readonly maxNotices: number;
  readonly maxLoud: number;
  readonly maxNoticesInAnyHour: number;
  readonly maxLoudInAnyHour: number;
  readonly maxLoudPerLot: number;
  readonly eveningBefore: number;
  /** These are never the reason of a loud notice. */
  readonly neverLoud: readonly string[];
  readonly questions: {
    readonly noneFrom: string;
    readonly noneUntil: string;
    readonly gatheredIntoAtMost: number;
    readonly notLaterThan: string;
  };
  /** For each lot a loud notice with its number, unless it was answered before. */
  readonly lastCalls: readonly {
    readonly lot: string;
    readonly stopAt: number;
    readonly notBefore: string;
    readonly notAfter: string;
  }[];
}

interface Written {
  readonly lotSets: Readonly<Record<string, readonly WrittenLot[]>>;
  readonly scripts: readonly WrittenSaturday[];
}

/** From the top of the project, which is the working directory of every command. */
export const written = JSON.parse(readFileSync('tests/fixtures/saturdays.json', 'utf8')) as Written;
