/** What a checker made of a file. */
export interface Result {
  readonly verdict: 'refused' | 'broken' | 'passes';
  /** The breaks that are named, a sentence each. */
  readonly findings: readonly string[];
  /** What a passing check owns up to, a sentence each. */
  readonly told: readonly string[];
  /** All the words that a person sees. */
  readonly said: string;
  /** What the checker itself shows of the data, as text. */
  readonly account?: string;
}

export interface Checker {
  readonly name: string;
  /** @param noted the text of a fingerprint, when one was noted */
  readonly checkPack?: (bytes: Uint8Array, noted: string | undefined) => Promise<Result>;
  readonly checkBackup?: (bytes: Uint8Array, noted: string | undefined) => Promise<Result>;
  /** A backup that is about to be merged into a journal that is there already. */
  readonly checkBackupBesideJournal?: (bytes: Uint8Array, own: Uint8Array) => Promise<Result>;
}

export interface Attack {
  readonly id: string;
  readonly target: 'pack' | 'backup';
  readonly what: string;
  /** The function that alters the file; `asItIs` leaves it. */
  readonly how: string;
  /** How long a check of it may take; given only where the file is made to take long. */
  readonly seconds?: number;
}

export interface Tried {
  readonly id: string;
  readonly what: string;
  /** Why the attack does not apply to the sample. */
  readonly skipped?: string;
  readonly sides: readonly {
    readonly name: 'alone' | 'noted' | 'beside';
    readonly expectation: string;
    readonly label: string;
    readonly outcome: string;
    readonly words: string | null;
    readonly verdict: 'ok' | 'MISSED' | 'more than expected';
  }[];
}

/** The table and its forger: plain JavaScript that shares nothing with the program, not even a type. */
interface AttackTable {
  readonly TABLE: readonly Attack[];
  readonly tryAttack: (
    attack: Attack,
    checker: Checker,
    options: {
      readonly samples: { readonly about: object; readonly text: (name: string) => string };
      readonly honest: Map<string, Result>;
      readonly most: number;
      readonly eachSide: boolean;
    },
  ) => Promise<Tried | null>;
}

/** The script that travels in every pack, which shares nothing with the program either. */
interface PackScript {
  readonly look: (
    html: string,
    notes: readonly string[],
  ) =>
    | { readonly refused: string }
    | {
        readonly refused?: undefined;
        readonly wrong: readonly string[];
        readonly told: readonly string[];
        readonly entries: readonly string[];
        readonly said: readonly string[];
      };
}

const load = (file: string): Promise<unknown> => import(new URL(file, import.meta.url).href);
export const loadTable = async () => (await load('./lib/try-attack.mjs')) as AttackTable;
export const loadScript = async () => (await load('../../scripts/verify-pack/look.mjs')) as PackScript;
