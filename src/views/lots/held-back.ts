/** Where the background keeps what it holds back, in the browser's memory. */
export const HELD_BACK = 'held-back';

/** A reminder that waits because the hour has had as many as the user wants. */
export interface HeldBack {
  readonly title: string;
  readonly body: string;
  /** Where it leads: a route of the companion page. */
  readonly route: string;
}
