export interface PressedChoiceProps<Value extends string> {
  readonly legend: string;
  readonly choices: readonly { readonly value: Value; readonly label: string }[];
  readonly value: Value;
  readonly onPress: (value: Value) => void;
}

/** One of a few, as a row of buttons of which one is pressed. */
export function PressedChoice<Value extends string>({ legend, choices, value, onPress }: PressedChoiceProps<Value>) {
  return (
    <fieldset class="row">
      <legend class="visually-hidden">{legend}</legend>
      {choices.map((choice) => (
        <button
          key={choice.value}
          type="button"
          aria-pressed={choice.value === value}
          onClick={() => onPress(choice.value)}
        >
          {choice.label}
        </button>
      ))}
    </fieldset>
  );
}
