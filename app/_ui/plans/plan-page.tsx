import Link from '../frame/link';
import type { ReactNode } from 'react';
import type { Custom } from '#core/units/shown';
import { Page } from '../frame/page';
import { Section } from '../frame/section';
import { instantSaid } from '../words/instant';
import { EQUIPMENT_WORDS } from '../words/kinds';
import { namesOf } from '../words/names';
import type { Speech } from '../words/said';
import type { PlanActions } from './answers';
import { type PlanMoment, type PlanPageData, type PlanVersionData, plansAt } from './data';
import { PlanDifferenceTable, PlanLinesTable } from './plan-lines-table';
import style from './plans.module.css';
import { TwoVersions } from './two-versions';
import { VersionTable } from './version-table';
import { WaitingVersion } from './waiting-version';

interface PlanPageProps {
  page: PlanPageData;
  units: Custom;
  actions: PlanActions;
  /** Two versions to be compared, as the address names them. */
  compared: { from: number | null; to: number | null };
  /** What the review would say with a version in force. */
  reviewWith: (version: number) => ReactNode;
}

/** The plan of one piece of equipment: what is in force, what waits, and what was before. */
export function PlanPageBody(props: PlanPageProps) {
  const { page, units } = props;
  const { site, facility, system, equipment, versions } = page;
  const speech = { units, names: namesOf(facility, system) };
  const inForce = versions.find(({ status }) => status === 'in-force');
  const at = plansAt(site.key, system.key, equipment.key);
  return (
    <Page
      title={`Plan of ${equipment.name}`}
      over={[
        { href: plansAt(site.key), name: 'Plans' },
        { href: plansAt(site.key, system.key), name: system.name },
      ]}
      lead={
        <p>
          {system.name}, {EQUIPMENT_WORDS[equipment.type]}. A plan is written by one person and put into force by
          another.
        </p>
      }
    >
      <Section
        id="in-force"
        title="In force"
        note={inForce ? sinceSaid(inForce.life, inForce.version, site.zone) : undefined}
      >
        {inForce ? <PlanLinesTable plan={inForce.plan} speech={speech} /> : <p>No plan is in force.</p>}
        {page.mayWrite ? (
          <p className={style.next}>
            <Link href={`${at}/write`}>Write the next version</Link>
          </p>
        ) : null}
      </Section>
      <Waiting {...props} speech={speech} inForce={inForce} />
      <Versions page={page} compared={props.compared} speech={speech} />
    </Page>
  );
}

interface WaitingProps extends PlanPageProps {
  speech: Speech;
  inForce: PlanVersionData | undefined;
}

/** Drafts of one's own, and whatever was submitted. */
function Waiting({ page, actions, reviewWith, speech, inForce }: WaitingProps) {
  const waiting = page.versions.filter(({ status, isOwn }) => status === 'submitted' || (status === 'draft' && isOwn));
  if (!inForce || waiting.length === 0) return null;
  return (
    <Section id="waiting" wide title="Waiting" note="Nothing of this is in force yet.">
      {waiting.map((version) => (
        <WaitingVersion
          key={version.version}
          page={page}
          version={version}
          inForce={inForce}
          speech={speech}
          actions={actions}
          review={page.mayWrite ? reviewWith(version.version) : null}
        />
      ))}
    </Section>
  );
}

/** Every version, and the difference of two of them. */
function Versions({ page, compared, speech }: Pick<PlanPageProps, 'page' | 'compared'> & { speech: Speech }) {
  const { site, versions } = page;
  const [from, to] = [compared.from, compared.to].map((one) => versions.find(({ version }) => version === one));
  return (
    <Section id="versions" wide title="Versions" note="Every version stays as it was written.">
      <VersionTable versions={versions} zone={site.zone} />
      {versions.length > 1 ? <TwoVersions versions={versions} from={from?.version} to={to?.version} /> : null}
      {from && to ? (
        <PlanDifferenceTable
          before={from.plan}
          after={to.plan}
          speech={speech}
          caption={`From version ${from.version} to version ${to.version}.`}
        />
      ) : null}
    </Section>
  );
}

function sinceSaid(life: readonly PlanMoment[], version: number, zone: string): string {
  const since = life.find(({ status }) => status === 'in-force');
  const by = since?.by ? `, put there by ${since.by}` : '';
  return since ? `Version ${version}, since ${instantSaid(since.at.toISOString(), zone)}${by}.` : `Version ${version}.`;
}
