import type { ComponentChildren } from 'preact';

interface NotYetProps {
  /** How many are missing, and of what. */
  readonly missing: string;
  /** What to record, and where. */
  readonly children: ComponentChildren;
}

/** What stands in place of a picture that would be mostly luck: how much is missing, and what to record until it shows. */
export function NotYet({ missing, children }: NotYetProps) {
  return (
    <div class="not-yet">
      <p class="strong">Not enough yet: {missing}.</p>
      <p class="quiet prose">{children}</p>
    </div>
  );
}
