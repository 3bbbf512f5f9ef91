import { OFFERED_MIN, REMIND_MIN } from '#core/call-outs/call-out';
import type { FormAction } from '../form/answer';
import { Field } from '../sign-in/field';
import { PersonForm } from '../sign-in/person-form';
import style from './call-outs.module.css';

/**
 * Says that one goes in alone, where, and for how long.
 * @param people who may be named
 */
export function BeginForm({
  site,
  people,
  begin,
}: {
  site: string;
  people: readonly { account: string; name: string }[];
  begin: FormAction<unknown>;
}) {
  return (
    <PersonForm send={begin} hidden={{ site }} button="I go in now" done="Noted. Say on this page when you are back.">
      <Field label="Where: room, system, roof" name="place" required maxLength={120} />
      <fieldset className={style.choices}>
        <legend>Back within</legend>
        {OFFERED_MIN.map((min) => (
          <label key={min}>
            <input type="radio" name="minutes" value={min} defaultChecked={min === 30} /> {min} min
          </label>
        ))}
      </fieldset>
      <p>You are reminded {REMIND_MIN} minutes before the time is over.</p>
      <label className={style.named}>
        Who may say besides you that you are back
        <select name="named" defaultValue="">
          <option value="">nobody but whoever is called</option>
          {people.map(({ account, name }) => (
            <option key={account} value={account}>
              {name}
            </option>
          ))}
        </select>
      </label>
    </PersonForm>
  );
}
