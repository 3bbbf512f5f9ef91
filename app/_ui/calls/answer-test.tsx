import { CHANNEL_WORDS, CHANNELS, type Channel } from '#core/alarms/channels';
import type { FormAction } from '../form/answer';
import { PersonForm } from '../sign-in/person-form';
import style from './calls.module.css';

/** Says that a test call came. @param by the way that the message itself named */
export function AnswerTest({
  site,
  test,
  by,
  answer,
}: {
  site: string;
  test: string;
  by: Channel | null;
  answer: FormAction<unknown>;
}) {
  return (
    <PersonForm send={answer} hidden={{ site, test }} button="I got it" done="Noted.">
      <fieldset className={style.choices}>
        <legend>It came by</legend>
        {CHANNELS.map((channel) => (
          <label key={channel}>
            <input type="radio" name="by" value={channel} defaultChecked={channel === by} />{' '}
            {CHANNEL_WORDS[channel].name}
          </label>
        ))}
      </fieldset>
    </PersonForm>
  );
}
