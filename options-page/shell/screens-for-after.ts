// One file for what follows a close, as for buying.

export { DisputeScreen } from '../disputes/dispute-screen.tsx';
export { DisputesScreen } from '../disputes/disputes-screen.tsx';
export { OpenDisputeScreen } from '../disputes/open-dispute-screen.tsx';
export { ResultsScreen } from '../results/results-screen.tsx';
export { ToDoScreen } from '../todo/todo-screen.tsx';
export { WonScreen } from '../won/won-screen.tsx';
export { readCounts } from './read-counts.ts';
