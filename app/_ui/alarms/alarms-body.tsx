import Link from '../frame/link';
import type { Custom } from '#core/units/shown';
import type { FormAction } from '../form/answer';
import { Page } from '../frame/page';
import { Section } from '../frame/section';
import { AloneNote } from '../call-outs/alone-note';
import type { CallOutView } from '../call-outs/call-outs-view';
import { siteAddress } from '../frame/site-address';
import { type CalledView, CallHelp } from '../rounds/call-help';
import { LiveRefresh } from '../live/live-refresh';
import { instantSaid } from '../words/instant';
import type { AcknowledgedView } from './acknowledged-note';
import type { AlarmView, SiteView } from './alarm-view';
import style from './alarms.module.css';
import { OpenAlarms } from './open-alarms';
import { PastAlarms } from './past-alarms';
import { SuppressedTable } from './suppressed-table';
import type { SuppressedView } from './suppressed-view';

interface AlarmsBodyProps {
  page: {
    site: SiteView;
    open: AlarmView[];
    past: AlarmView[];
    suppressed: SuppressedView[];
    mayAcknowledge: boolean;
    help: { systems: { key: string; name: string }[]; nextCall: string } | null;
    /** When alarms were last judged, where that is too long ago. */
    notJudgedSince: string | null;
  };
  units: Custom;
  acknowledge: FormAction<AcknowledgedView>;
  call: FormAction<CalledView>;
  /** Who is in alone. */
  alone: readonly CallOutView[];
}

/** The alarms of a site: what wants something, and what was in the past week. */
export function AlarmsBody({ page, units, acknowledge, call, alone }: AlarmsBodyProps) {
  const { site, open, past, suppressed, mayAcknowledge } = page;
  return (
    <Page
      title="Alarms"
      over={[
        { href: '/', name: 'Systems' },
        { href: siteAddress(site.key), name: site.name },
      ]}
      lead={<Lead page={page} alone={alone} />}
    >
      <Section
        id="open"
        title="Open alarms"
        note={`Since when each was raised, by the clock of ${site.zone}. Acknowledging says that you have seen it; it changes nothing at the equipment.`}
        wide
      >
        <OpenAlarms site={site} alarms={open} units={units} mayAcknowledge={mayAcknowledge} acknowledge={acknowledge} />
      </Section>
      {page.help === null ? null : <Help site={site.key} help={page.help} call={call} />}
      <Section id="suppressed" title="Call nobody" wide>
        {suppressed.length === 0 ? <p>Every alarm may call.</p> : <SuppressedTable site={site} lines={suppressed} />}
        <p>
          <Link href={`${siteAddress(site.key)}/alarms/suppressed`}>
            Shelve an alarm, take one out of service, or end that
          </Link>
        </p>
      </Section>
      <Section id="past" title="Past seven days" wide>
        <PastAlarms site={site} alarms={past} units={units} />
      </Section>
    </Page>
  );
}

function Help({ site, help, call }: HelpProps) {
  return (
    <Section
      id="help"
      title="Call for help"
      note="For what no sensor reads: a smell, water on the floor, animals that are not right."
    >
      <CallHelp site={site} {...help} system={null} call={call} />
    </Section>
  );
}

interface HelpProps extends Pick<AlarmsBodyProps, 'call'> {
  site: string;
  help: NonNullable<AlarmsBodyProps['page']['help']>;
}

function Lead({ page: { site, open, notJudgedSince }, alone }: Pick<AlarmsBodyProps, 'page' | 'alone'>) {
  return (
    <>
      <p>{leadOf(open)}</p>
      <AloneNote site={site.key} zone={site.zone} open={alone} />
      {notJudgedSince === null ? null : <NotJudged since={notJudgedSince} zone={site.zone} />}
      <p>
        <Link href={siteAddress(site.key, 'alarms', 'calls')}>How people are called</Link>,{' '}
        <Link href={siteAddress(site.key, 'alarms', 'performance')}>how the alarms did</Link>
      </p>
      <LiveRefresh site={site.key} what={['alarms', 'readings']} />
    </>
  );
}

function leadOf(open: readonly AlarmView[]): string {
  const count = (...states: AlarmView['state'][]) => open.filter(({ state }) => states.includes(state)).length;
  const latched = count('latched-acknowledged');
  return [
    `Not acknowledged: ${count('unacknowledged', 'latched-unacknowledged')}.`,
    `Acknowledged, still active: ${count('acknowledged')}.`,
    `Back to normal, not acknowledged: ${count('returned')}.`,
    ...(latched === 0 ? [] : [`To be reset: ${latched}.`]),
  ].join(' ');
}

function NotJudged({ since, zone }: { since: string; zone: string }) {
  return (
    <p>
      <span aria-hidden="true" className={style.mark}>
        ▲
      </span>{' '}
      <strong>
        Alarms are not being judged
        {since === 'never' ? ' yet' : ` since ${instantSaid(since, zone)}`}: nothing new would be raised.
      </strong>{' '}
      Tell whoever looks after Holdfast.
    </p>
  );
}
