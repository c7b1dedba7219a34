import type { LotId } from '../../domain/lot/lot.ts';
import type { Refusal } from '../../domain/outcome.ts';
import type { Envelope } from '../../journal/read-entry.ts';

/** Why entries from elsewhere and the journal here can't be one journal. */
export interface Conflicts {
  different(here: Envelope): Refusal;
  forked(here: Envelope): Refusal;
  bornTwice(lot: LotId): Refusal;
}

/** Where the other entries come from, and what did not happen: "in the backup", "Nothing was restored." */
export interface Elsewhere {
  readonly there: string;
  readonly end: string;
}

export const conflictsWith = ({ there, end }: Elsewhere): Conflicts => ({
  different: ({ sequence, device }) => ({
    reason: 'conflict',
    message: `Entry number ${sequence} of device ${device} is here and ${there}, but not the same: one of the two was changed after it was written. ${end}`,
  }),
  forked: ({ sequence, device }) => ({
    reason: 'forked',
    message: `Here and ${there}, two different entries are number ${sequence} of device ${device}, as when a browser profile was copied and both copies were used. ${end}`,
  }),
  bornTwice: (lot) => ({
    reason: 'lot-twice',
    message: `Lot ${lot} came in once here and once ${there}, by different entries. ${end}`,
  }),
});
