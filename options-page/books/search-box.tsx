import { FieldFrame } from '../../src/ui/inputs/field.tsx';

/** Narrows a list down while one types. */
export function SearchBox({
  label,
  value,
  onChange,
}: {
  label: string;
  value: string;
  onChange: (text: string) => void;
}) {
  return (
    <FieldFrame label={label}>
      {({ id }) => (
        <input
          id={id}
          type="search"
          value={value}
          autoComplete="off"
          spellcheck={false}
          onInput={(event) => onChange(event.currentTarget.value)}
        />
      )}
    </FieldFrame>
  );
}
