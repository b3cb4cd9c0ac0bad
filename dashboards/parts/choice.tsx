/** One of a few, as large targets side by side. */
interface ChoiceProps {
  readonly legend: string;
  readonly name: string;
  readonly value: string;
  /** Value and its words. */
  readonly choices: readonly (readonly [value: string, words: string])[];
  readonly choose: (value: string) => void;
}

export function Choice({ legend, name, value, choices, choose }: ChoiceProps) {
  return (
    <fieldset class="choice">
      <legend>{legend}</legend>
      {choices.map(([each, words]) => (
        <label key={each} class={each === value ? 'chosen' : ''}>
          <input
            type="radio"
            name={name}
            value={each}
            checked={each === value}
            onChange={() => choose(each)}
          />
          {words}
        </label>
      ))}
    </fieldset>
  );
}
