import { CHANNEL_WORDS, CHANNELS, type Channel } from '#core/alarms/channels';
import type { FormAction } from '../form/answer';
import { Page } from '../frame/page';
import { Section } from '../frame/section';
import { siteAddress } from '../frame/site-address';
import { LiveRefresh } from '../live/live-refresh';
import { AnswerTest } from './answer-test';
import type { CallsView } from './calls-view';
import { WHOM_WORDS } from './calls-view';
import { PeopleCalled } from './people-called';
import { type WebhookActions, WebhookSection } from './webhook-section';

/** What can be done on the page. */
export interface CallsActions extends WebhookActions {
  call: FormAction<unknown>;
  answer: FormAction<unknown>;
}

/** How the people of a site are called. @param by the way by which one came here, if a message says so */
export function CallsBody({ page, by, actions }: { page: CallsView; by: Channel | null; actions: CallsActions }) {
  const { site, ownTest, isMailed, mayAnswer } = page;
  const at = siteAddress(site.key);
  return (
    <Page
      title="How people are called"
      over={[
        { href: '/', name: 'Systems' },
        { href: at, name: site.name },
        { href: `${at}/alarms`, name: 'Alarms' },
      ]}
      lead={
        <>
          <p>{leadOf(page)}</p>
          <LiveRefresh site={site.key} what={['alarms']} />
        </>
      }
    >
      {ownTest === null || !mayAnswer ? null : (
        <Section
          id="own"
          title="A test call to you"
          note={<p>Nothing is wrong. Say that it came, and by which way.</p>}
        >
          <AnswerTest site={site.key} test={ownTest} by={by} answer={actions.answer} />
        </Section>
      )}
      <People page={page} call={actions.call} />
      <Steps steps={page.steps} />
      <Ways isMailed={isMailed} />
      <WebhookSection page={page} actions={actions} />
    </Page>
  );
}

function leadOf({ people, isMailed, webhook }: CallsView): string {
  const missed = people.filter(({ state }) => state === 'missed').length;
  const unknown = people.filter(({ state }) => state === 'never' || state === 'long-ago').length;
  if (!isMailed && webhook === null && people.every(({ ways }) => ways.length === 0))
    return 'There is no way to anybody: no mail server was named, no browser takes calls, and there is no webhook.';
  if (people.length === 0) return 'Nobody has a role here by which they would be called.';
  if (missed + unknown === 0) return 'Everybody was reached, or is being asked.';
  return `Missed the last test call: ${missed}. Not reached, or not for too long: ${unknown}.`;
}

function People({ page, call }: { page: CallsView; call: FormAction<unknown> }) {
  return (
    <Section
      id="people"
      title="People"
      note={
        <p>
          A test call goes to each of them every {page.eachDays} days, in hours in which they are awake. An alarm that
          somebody acknowledged counts as one. The review counts on nobody who was not reached.
        </p>
      }
      wide
    >
      <PeopleCalled page={page} call={call} />
    </Section>
  );
}

function Steps({ steps: { given, isUsual, repeatMin } }: Pick<CallsView, 'steps'>) {
  return (
    <Section
      id="steps"
      title="Steps"
      note={
        <p>
          {isUsual ? 'The usual ones: the description of the site says nothing else.' : 'As the site is described.'}
        </p>
      }
    >
      <ol>
        {given.map(({ whom, afterMin }) => (
          <li key={`${whom} ${afterMin}`}>
            {afterMin === 0 ? 'At once' : `After ${afterMin} min without acknowledgement`}: {WHOM_WORDS[whom]}
          </li>
        ))}
      </ol>
      <p>
        The last step is repeated every {repeatMin} min until somebody acknowledges, the alarm is shelved or it is back
        to normal. When nobody is on, the last step is taken at once. Whoever has quiet hours is passed over in them,
        unless they are on, nobody else could be told, or it is the last step. An alarm may have a shorter time of its
        own to the second step.
      </p>
    </Section>
  );
}

function Ways({ isMailed }: Pick<CallsView, 'isMailed'>) {
  return (
    <Section
      id="ways"
      title="Ways"
      note={<p>What each can do. Only a way that was tested is sure to reach anybody.</p>}
    >
      <dl>
        {CHANNELS.map((channel) => (
          <div key={channel}>
            <dt>{CHANNEL_WORDS[channel].name}</dt>
            <dd>
              {CHANNEL_WORDS[channel].can}
              {channel === 'mail' && !isMailed ? ' No mail server was named, so nothing is sent from here.' : ''}
              {channel === 'push' ? ' Each person adds their own browsers on the page of their account.' : ''}
            </dd>
          </div>
        ))}
      </dl>
    </Section>
  );
}
