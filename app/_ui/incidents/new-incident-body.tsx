import type { FormAction } from '../form/answer';
import { Page } from '../frame/page';
import { siteAddress } from '../frame/site-address';
import cautions from './cautions.json';
import style from './incidents.module.css';
import { type NewView, OpenForm } from './open-form';
import { whenSaid } from './when';

/** The form by which an incident is opened. What matters most for people stands above it. */
export function NewIncidentBody({ page, open }: { page: NewView; open: FormAction<{ site: string; number: number }> }) {
  const { site, alarm } = page;
  const at = siteAddress(site.key);
  return (
    <Page
      title="Open an incident"
      over={[
        { href: '/', name: 'Systems' },
        { href: at, name: site.name },
        { href: `${at}/incidents`, name: 'Incidents' },
      ]}
      lead={
        alarm ? (
          <p>
            From the alarm “{alarm.name}” of {alarm.system}, raised {whenSaid(alarm.raisedMs, site.zone)}.
          </p>
        ) : (
          <p>A few words are enough now. Everything else is added afterwards.</p>
        )
      }
    >
      <ul className={style.caution}>
        {cautions.first.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
      <OpenForm page={page} open={open} />
    </Page>
  );
}
