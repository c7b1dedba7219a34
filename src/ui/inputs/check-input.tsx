import { useId } from 'preact/hooks';

export interface CheckInputProps {
  readonly label: string;
  readonly value: boolean;
  readonly onCommit: (value: boolean) => void;
}

/** Yes or no. */
export function CheckInput({ label, value, onCommit }: CheckInputProps) {
  const id = useId();
  return (
    <span class="row">
      <input id={id} type="checkbox" checked={value} onChange={(event) => onCommit(event.currentTarget.checked)} />
      <label for={id}>{label}</label>
    </span>
  );
}
