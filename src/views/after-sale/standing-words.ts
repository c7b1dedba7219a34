import type { OpenReason, WinStanding } from '../../domain/after-sale/win-standing.ts';
import { FROM_WORDS } from '../../domain/deadline/deadline-words.ts';
import { sayTime } from '../../domain/time/say-time.ts';
import type { Zone } from '../../domain/time/zone.ts';

/** "Final", "Not final yet", "Undone". */
export const STANDING_TITLES: Readonly<Record<WinStanding['as'], string>> = {
  final: 'Final',
  open: 'Not final yet',
  undone: 'Undone',
};

/** Why a win is not final, or since when it is, in a sentence. */
export function standingInWords(standing: WinStanding, storeZone: Zone): string {
  switch (standing.as) {
    case 'final':
      return `Since ${sayTime(standing.since, storeZone)}: the title is in and the time for claims is over.`;
    case 'undone':
      return 'The sale does not stand any more: its cash and its place are free.';
    case 'open': {
      // Of several windows the last to end is the one that counts.
      const last = Math.max(...standing.because.map((reason) => (reason.kind === 'window' ? reason.until : 0)));
      const told = standing.because.filter((reason) => reason.kind !== 'window' || reason.until === last);
      const reasons = [...new Set(told.map((reason) => reasonInWords(reason, storeZone)))];
      return `${reasons.join('; ')}.`.replace(/^./, (letter) => letter.toUpperCase());
    }
  }
}

function reasonInWords(reason: OpenReason, storeZone: Zone): string {
  switch (reason.kind) {
    case 'dispute':
      return 'it is disputed';
    case 'no-title':
      return 'the title is not in';
    case 'window':
      return `a claim can be brought up until ${sayTime(reason.until, storeZone)}`;
    case 'window-waits':
      return `the time for a claim has not begun: it counts from ${FROM_WORDS[reason.from]}`;
    case 'no-rules':
      return 'Setup does not say until when a claim can be brought up at this venue';
  }
}
