import type { Custom } from '#core/units/shown';
import style from './view-choices.module.css';

/** How light the page is: as the device says, or one of the two. */
export type Light = 'device' | 'light' | 'dark';

const UNITS: { value: Custom; name: string }[] = [
  { value: 'metric', name: '°C, litres, mm' },
  { value: 'us', name: '°F, US gallons, inches' },
];
const LIGHTS: { value: Light; name: string }[] = [
  { value: 'device', name: 'as the device' },
  { value: 'light', name: 'light' },
  { value: 'dark', name: 'dark' },
];

/** A choice of units, if it is one. */
export function unitsOf(value: unknown): Custom | null {
  return UNITS.find((option) => option.value === value)?.value ?? null;
}

/** A choice of light, if it is one. */
export function lightOf(value: unknown): Light | null {
  return LIGHTS.find((option) => option.value === value)?.value ?? null;
}

/**
 * A person's choice of units and light; works without scripts.
 * @param choose server action that is given `units` or `light` and keeps it
 */
export function ViewChoices({
  units,
  light,
  choose,
}: {
  units: Custom;
  light: Light;
  choose: (form: FormData) => Promise<void>;
}) {
  return (
    <details className={style.choices}>
      <summary>Units and light</summary>
      <div className={style.sheet}>
        <Choice name="units" title="Units" options={UNITS} chosen={units} choose={choose} />
        <Choice name="light" title="Light" options={LIGHTS} chosen={light} choose={choose} />
      </div>
    </details>
  );
}

interface ChoiceProps {
  name: string;
  title: string;
  options: { value: string; name: string }[];
  chosen: string;
  choose: (form: FormData) => Promise<void>;
}

function Choice({ name, title, options, chosen, choose }: ChoiceProps) {
  return (
    <form action={choose}>
      <fieldset>
        <legend>{title}</legend>
        {options.map((option) => (
          <button
            key={option.value}
            type="submit"
            name={name}
            value={option.value}
            aria-pressed={option.value === chosen}
          >
            {option.name}
          </button>
        ))}
      </fieldset>
    </form>
  );
}
