import { ok } from '../../domain/outcome.ts';
import { matchTitle } from '../../domain/setup/match-title.ts';
import { matchVenue } from '../../domain/setup/match-venue.ts';
import { plainWords } from '../../domain/text/plain-words.ts';
import type { Zone } from '../../domain/time/zone.ts';
import type { Meant } from '../import-questions.ts';
import { memory } from './memory.ts';
import type { ReadContext } from './read-context.ts';

/** What the cells of a close come to before they are read: one line, and its zone where that has a cell of its own. */
export interface CloseWords {
  readonly text: string;
  readonly zone?: Zone;
}

/** A context that answers what it was asked before from memory; one for each file, since headings count too. */
export interface RowContext extends ReadContext {
  readonly venueNamed: (text: string) => ReturnType<typeof matchVenue>;
  readonly titleNamed: (text: string) => ReturnType<typeof matchTitle>;
  readonly closeWords: (key: string, work: () => CloseWords) => CloseWords;
  /** The words of another unit in a heading, once a heading. */
  readonly unitIn: (heading: string, work: () => string | null) => string | null;
  /** Whether the file was written by Headroom, which puts commas in quote marks and small amounts as they are. */
  readonly ownFile: boolean;
}

export function remembering(context: ReadContext, ownFile: boolean): RowContext {
  const closes = memory<ReturnType<ReadContext['readClose']>>();
  const venues = memory<ReturnType<typeof matchVenue>>();
  const titles = memory<ReturnType<typeof matchTitle>>();
  const said = (about: keyof Meant, text: string) => {
    const id = context.meant?.[about].get(plainWords(text));
    return id === undefined ? null : ok(id);
  };
  return {
    ...context,
    readClose: (text, known) =>
      closes(`${known.zone ?? ''} ${known.venueZone ?? ''} ${known.column?.countsDown ?? ''} ${text}`, () =>
        context.readClose(text, known),
      ),
    venueNamed: (text) => venues(text, () => said('venue', text) ?? matchVenue(text, context.venues)),
    titleNamed: (text) => titles(text, () => said('title', text) ?? matchTitle(text, context.titles)),
    closeWords: memory<CloseWords>(),
    unitIn: memory<string | null>(),
    ownFile,
  };
}
