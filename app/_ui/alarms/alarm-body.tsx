import Link from '../frame/link';
import type { Custom } from '#core/units/shown';
import type { FormAction } from '../form/answer';
import { Page } from '../frame/page';
import { Section } from '../frame/section';
import { siteAddress } from '../frame/site-address';
import { LiveRefresh } from '../live/live-refresh';
import { instantSaid } from '../words/instant';
import { lasting } from '../words/lasting';
import { toAcknowledge } from './to-acknowledge';
import { AcknowledgeForm } from './acknowledge-form';
import type { AcknowledgedView } from './acknowledged-note';
import { AlarmCascade, type CascadeView } from './alarm-cascade';
import { AlarmLog, type LogLineView } from './alarm-log';
import { AlarmStateMark } from './alarm-state';
import { type AlarmView, alarmAddress, limitSaid, type SiteView } from './alarm-view';
import style from './alarms.module.css';
import { GoAlone } from './go-alone';
import { NoteForm } from './note-form';
import { CalledAnew, PrioritySaid } from './open-alarm';
import { ResetForm } from './reset-form';
import { RightAgain } from './right-again';
import { SeenByHand } from './seen-by-hand';
import { ToldList } from './told-list';
import { ValueNow } from './value-now';
import { WhatToDo } from './what-to-do';

interface AlarmBodyProps {
  page: CascadeView & {
    site: SiteView;
    line: AlarmView;
    log: LogLineView[];
    mayAcknowledge: boolean;
    mayShelve: boolean;
    mayOpenIncident: boolean;
  };
  units: Custom;
  acknowledge: FormAction<AcknowledgedView>;
  note: FormAction<unknown>;
  reset: FormAction<unknown>;
  rightAgain: FormAction<unknown>;
  goAlone: FormAction<unknown>;
}

/** One time that an alarm was raised: how it stands, its whole life, and what may be done. */
export function AlarmBody({ page, units, acknowledge, note, reset, rightAgain, goAlone }: AlarmBodyProps) {
  const { site, line, log, mayAcknowledge } = page;
  const at = siteAddress(site.key);
  return (
    <Page
      title={line.name}
      over={[
        { href: '/', name: 'Systems' },
        { href: at, name: site.name },
        { href: `${at}/alarms`, name: 'Alarms' },
      ]}
      lead={<Lead site={site} line={line} units={units} />}
    >
      {mayAcknowledge ? <Acknowledge page={page} acknowledge={acknowledge} note={note} /> : null}
      {mayAcknowledge ? <RightAgain site={site.key} alarm={line} rightAgain={rightAgain} /> : null}
      <WhatToDo alarm={line} />
      {mayAcknowledge ? <GoAlone site={site.key} alarm={line} goAlone={goAlone} /> : null}
      {mayAcknowledge && line.state === 'latched-acknowledged' ? (
        <Section
          id="reset"
          title="Reset"
          note="What it watches is back, and it stays until somebody has looked. A reset starts no equipment."
        >
          <ResetForm site={site.key} alarm={line} reset={reset} />
        </Section>
      ) : null}
      <Stands page={page} units={units} />
      <Section id="life" title="Its life" note={`Times are those of ${site.zone}.`} wide>
        <AlarmLog alarm={line} log={log} site={site} units={units} />
      </Section>
    </Page>
  );
}

function Acknowledge({ page, acknowledge, note }: Pick<AlarmBodyProps, 'page' | 'acknowledge' | 'note'>) {
  const { site, line, explains } = page;
  return (
    <Section
      id="acknowledge"
      title="Acknowledge"
      note="It says that you have seen it. Holdfast switches nothing: what is to be done at the equipment is yours."
    >
      <AcknowledgeForm
        key={line.id}
        site={site}
        alarm={line}
        folded={toAcknowledge(explains)}
        acknowledge={acknowledge}
      />
      {line.acknowledged === null ? null : <NoteForm site={site.key} alarm={line} note={note} />}
    </Section>
  );
}

function Stands({ page, units }: Pick<AlarmBodyProps, 'page' | 'units'>) {
  const { site, line, mayShelve, mayOpenIncident } = page;
  const at = siteAddress(site.key);
  return (
    <Section id="stands" title="How it stands">
      <Facts site={site} line={line} units={units} />
      <AlarmCascade site={site.key} cause={page.cause} explains={page.explains} />
      {mayShelve && !line.isRetired ? (
        <p>
          <Link href={`${at}/alarms/suppressed?alarm=${line.alarm}#shelve`}>Shelve it, or take it out of service</Link>
        </p>
      ) : null}
      {mayOpenIncident ? (
        <p>
          <Link href={`${at}/incidents/new?alarm=${line.id}`}>Open an incident</Link>
        </p>
      ) : null}
    </Section>
  );
}

function Lead({ site, line, units }: { site: SiteView; line: AlarmView; units: Custom }) {
  const { system, newer } = line;
  return (
    <>
      <p>
        <AlarmStateMark state={line.state} isEnded={line.endedBy !== null} />
        <PrioritySaid alarm={line} />, <Link href={siteAddress(site.key, 'systems', system.key)}>{system.name}</Link>.
        Raised {instantSaid(line.raisedAt, site.zone)}.
        {line.isRetired && line.caller === null ? ' This alarm has been retired since.' : ''}
      </p>
      <Seen site={site} line={line} units={units} />
      <CalledAnew alarm={line} units={units} />
      {newer === null ? null : (
        <p>
          <strong>It was raised again since:</strong>{' '}
          <Link href={alarmAddress(site.key, newer)}>look at the newest alarm</Link>.
        </p>
      )}
      <LiveRefresh site={site.key} what={['alarms', 'readings']} />
    </>
  );
}

/** What it is about, before anything else: what it reads, or what somebody saw. */
function Seen({ site, line, units }: { site: SiteView; line: AlarmView; units: Custom }) {
  if (line.caller !== null)
    return (
      <dl className={style.facts}>
        <SeenByHand site={site.key} alarm={line} />
      </dl>
    );
  const limit = limitSaid(line.definition, units);
  return (
    <p>
      Newest reading: <ValueNow alarm={line} zone={site.zone} units={units} />. It {limit}.
    </p>
  );
}

function Facts({ site, line, units }: { site: SiteView; line: AlarmView; units: Custom }) {
  return (
    <dl className={style.facts}>
      {line.caller === null ? <Watched line={line} units={units} /> : null}
      <dt>Told</dt>
      <dd>
        <ToldList alarm={line} site={site} />
      </dd>
    </dl>
  );
}

function Watched({ line: { definition }, units }: { line: AlarmView; units: Custom }) {
  return (
    <>
      <dt>Watches</dt>
      <dd>
        {limitSaid(definition, units)}, held for {lasting(definition.delayS)}
        {definition.on.kind === 'watts' ? (
          <p className={style.about}>
            Its watts range, and whether it is meant to run: by its plan, the states in force and the readings that
            regulate it. Where these leave that open, as between two set-points, only the range counts.
          </p>
        ) : null}
      </dd>
    </>
  );
}
