// One file for what follows a close, as for buying.
export { ToDoScreen } from './after-sale/todo-screen.tsx';
export { WonScreen } from './after-sale/won-screen.tsx';
export { DisputeScreen } from './disputes/dispute-screen.tsx';
export { DisputesScreen } from './disputes/disputes-screen.tsx';
export { OpenDisputeScreen } from './disputes/open-dispute-screen.tsx';
export { ResultsScreen } from './results/results-screen.tsx';
