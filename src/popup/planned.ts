import { createContext } from 'preact';
import { NO_PLAN, type PlannedBids } from '../views/lots/planned-bids.ts';

/** What the plan bids, as it was when the popup was opened: it lives for seconds. */
export const Planned = createContext<PlannedBids>(NO_PLAN);
