import type { OpenReason, WinStanding } from '../../domain/after-sale/win-standing.ts';
import { FROM_WORDS } from '../../domain/deadline/deadline-words.ts';
import { sayTime } from '../../domain/time/say-time.ts';
import type { Zone } from '../../domain/time/zone.ts';

/** "Final", "Not final yet", "Canceled". */
export const STANDING_TITLES: Readonly<Record<WinStanding['as'], string>> = {
  final: 'Final',
  open: 'Not final yet',
  undone: 'Canceled',
};

/** Why a win is not final, or since when it is, in a sentence. */
export function standingInWords(standing: WinStanding, storeZone: Zone): string {
  switch (standing.as) {
    case 'final':
      return `Since ${sayTime(standing.since, storeZone)}: the title is received and the time for claims is over.`;
    case 'undone':
      return 'The sale was canceled. Its cash and lot space are free again.';
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
      return 'it is in dispute';
    case 'no-title':
      return 'the title is not received';
    case 'window':
      return `claims are open until ${sayTime(reason.until, storeZone)}`;
    case 'window-waits':
      return `the time for claims has not started: it counts from ${FROM_WORDS[reason.from]}`;
    case 'no-rules':
      return 'Setup has no claim deadline for this venue';
  }
}
