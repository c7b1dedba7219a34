// One file for what a hand does in the list: it is loaded when the first row is pressed or chosen, not before.
export { ChoiceBar } from './choice-bar.tsx';
export { CompareLots } from './compare-lots.tsx';
export { offerInRow } from './offer-in-row.ts';
export { RowPanel } from './row-panel.tsx';
