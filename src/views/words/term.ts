/** A term or a figure that users read: what it means, and where the figure comes from. */
export interface Term {
  readonly term: string;
  readonly meaning: string;
  /** Where the figure comes from; absent for a term that is no figure. */
  readonly from?: string;
  /** Where the user can change what it comes from. */
  readonly change?: { readonly href: string; readonly label: string };
}

/** The part of Setup where the user can change it. */
export const inSetup = (part: string, label: string) => ({ href: `#/setup/${part}`, label: `Setup › ${label}` });
