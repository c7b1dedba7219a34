export type { LotState } from '../journal/states/lot-state.ts';
