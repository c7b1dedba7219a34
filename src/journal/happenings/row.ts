import * as z from 'zod/mini';
import type { LotId } from '../../domain/lot/lot.ts';
import type { Instant } from '../../domain/time/instant.ts';
import type { DeviceId } from '../ids.ts';
import type { BooksDraft } from '../states/books-state.ts';
import type { LotState } from '../states/lot-state.ts';
import type { Noted } from '../states/noted.ts';
import type { SetupState } from '../states/setup-state.ts';

/** How much of a lot's own entries an evidence pack shows whole, the narrowest first. */
export type PackShows = 'sale' | 'dispute' | 'everything';

/** A file that an entry names. */
export interface NamedFile {
  /** SHA-256 of its bytes. */
  readonly hash: string;
  /** What it is called; null where the entry does not say. */
  readonly name: string | null;
}

/** What every kind of happening says of itself. */
interface Traits<Told> {
  /** Where a user can undo it: in the lot's history, only where it was made, or nowhere. */
  readonly undo: 'in history' | 'where made' | 'never';
  /** The narrowest evidence pack of its lot that shows it whole. */
  readonly pack: PackShows;
  /** When it was done or seen, where the one who writes it down states that. */
  readonly doneAt?: (told: Told) => Instant;
  readonly files?: (told: Told) => readonly NamedFile[];
}

/** What wrote an entry. */
export interface Writer {
  readonly device: DeviceId;
  /** The JOURNAL_VERSION it writes with. */
  readonly version: number;
}

/** About one lot. */
interface LotTraits<Told> extends Traits<Told> {
  /** What it changes of the lot; null when it changes nothing, as it then stands. Applied in the order of the entries' ids. */
  readonly fold: (lot: LotState, told: Told, noted: Noted, by: Writer) => Partial<LotState> | null;
}

/** Brings lots in. */
interface ArrivalTraits<Told> extends Traits<Told> {
  readonly fold: (told: Told, noted: Noted) => LotState[];
}

/** About the setup. */
interface SetupTraits<Told> extends Traits<Told> {
  readonly fold: (setup: SetupState, told: Told) => SetupState;
}

/** About the alerts as a whole. */
interface AlertTraits<Told> extends Traits<Told> {
  /** Where it counts: what one browser has said is not taken as said in another, before which somebody else sits. */
  readonly counts: 'in its own browser' | 'everywhere';
  /** The keys of alerts that count from here on as shown, and as not shown. */
  readonly fold: (told: Told) => { readonly shown?: readonly string[]; readonly voided?: readonly string[] };
}

/** About the books as a whole: one bill may be for several cars. */
interface BooksTraits<Told> extends Traits<Told> {
  /** Writes it into the books. */
  readonly fold: (books: BooksDraft, told: Told, noted: Noted) => void;
  /** What it says of one lot, which may be some of its lines; null when that is nothing. */
  readonly ofLot: (told: Told, lot: LotId) => Told | null;
}

interface TraitsAbout<Told> {
  readonly lot: LotTraits<Told>;
  readonly arrival: ArrivalTraits<Told>;
  readonly setup: SetupTraits<Told>;
  readonly alerts: AlertTraits<Told>;
  readonly books: BooksTraits<Told>;
  /** Says that another entry no longer counts, whatever that was about. */
  readonly undo: Traits<Told>;
}
type About = keyof TraitsAbout<unknown>;

/** All that the program knows of a kind of happening, but for its words (`*-words.ts`). */
export type Row<Told> = { [A in About]: { readonly about: A } & TraitsAbout<Told>[A] }[About];

type Schema<Kind extends string, Shape> = z.ZodMiniObject<{ kind: z.ZodMiniLiteral<Kind> } & Shape, z.core.$strict>;

/** What a row of a group looks like to those who only list it. */
export interface AnyRow {
  readonly kind: string;
  readonly schema: z.ZodMiniObject;
}

/** What happens by a row, as it is kept in an entry. */
export type ToldBy<One extends AnyRow> = z.output<One['schema']>;

/** Words for every kind of a group of rows; one without words does not compile. */
export type WordsFor<Rows extends readonly AnyRow[]> = {
  readonly [One in Rows[number] as One['kind']]: (told: ToldBy<One>) => string;
};

const rowsAbout =
  <A extends About>(about: A) =>
  <const Kind extends string, const Shape extends z.core.$ZodLooseShape>(
    kind: Kind,
    shape: Shape,
    traits: TraitsAbout<z.output<Schema<Kind, Shape>>>[A],
  ) => ({ ...traits, about, kind, schema: z.strictObject({ kind: z.literal(kind), ...shape }) as Schema<Kind, Shape> });

/** A kind that is about one lot: its name in the journal, what is kept beside it, and the rest. */
export const aboutLot = rowsAbout('lot');
export const arrival = rowsAbout('arrival');
export const aboutSetup = rowsAbout('setup');
export const aboutAlerts = rowsAbout('alerts');
export const aboutBooks = rowsAbout('books');
export const undoing = rowsAbout('undo');
