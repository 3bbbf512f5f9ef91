import Link from '../frame/link';
import type { FormAction } from '../form/answer';
import { Section } from '../frame/section';
import { siteAddress } from '../frame/site-address';
import { PersonForm } from '../sign-in/person-form';
import type { AlarmView } from './alarm-view';

/** min that one press gives; more is a second press. Common practice, no source. */
const FIRST_MIN = '30';

/** One press at night: the alarm is acknowledged, and others are called unless one is back in time. */
export function GoAlone({ site, alarm, goAlone }: { site: string; alarm: AlarmView; goAlone: FormAction<unknown> }) {
  const { id, acknowledged, state, endedBy } = alarm;
  if (endedBy !== null || state.startsWith('suppressed')) return null;
  const page = <Link href={siteAddress(site, 'call-outs')}>In alone</Link>;
  return (
    <Section
      id="alone"
      title="Going in alone"
      note="Others are called when the time is over and nobody has said that you are back."
    >
      <PersonForm
        send={goAlone}
        hidden={{ site, occurrence: id, minutes: FIRST_MIN }}
        button={`${acknowledged === null ? 'Acknowledge, and I' : 'I'} go in alone: back within ${FIRST_MIN} min`}
        look="second"
        done="Noted. Say when you are back, or take more time, under In alone."
      />
      <p>Another time, another place, and the press when you are back: {page}.</p>
    </Section>
  );
}
