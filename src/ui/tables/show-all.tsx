interface ShowAllProps {
  readonly shown: number;
  readonly of: number;
  /** What goes before the count: "The first". */
  readonly which: string;
  /** What follows it. */
  readonly more?: string;
  readonly onAll: () => void;
}

/** Says that a long list is drawn in part, and draws the rest when asked; nothing where all of it stands. */
export function ShowAll({ shown, of, which, more = '', onAll }: ShowAllProps) {
  if (shown >= of) return null;
  return (
    <p class="row">
      <span class="quiet">
        {which} {shown.toLocaleString('en-US')} of {of.toLocaleString('en-US')}
        {more}.
      </span>
      <button type="button" class="no-print" onClick={onAll}>
        Show all
      </button>
    </p>
  );
}
