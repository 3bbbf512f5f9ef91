import type { FormAction } from '../form/answer';
import { Page } from '../frame/page';
import { Section } from '../frame/section';
import { siteAddress } from '../frame/site-address';
import { Field } from '../sign-in/field';
import { PersonForm } from '../sign-in/person-form';
import { type Column, Ledger } from '../table/ledger';
import { instantSaid } from '../words/instant';
import style from './keys.module.css';

/** Who has which key of a site. Instants in ISO, UTC. */
interface KeysView {
  site: { key: string; name: string; zone: string };
  keys: KeyRow[];
  people: { account: string; name: string }[];
}

interface KeyRow {
  key: string;
  holder: string | null;
  place: string | null;
  at: string;
  by: string;
}

/** Who has which key, and the form that hands one on. */
export function KeysBody({ page, hand }: { page: KeysView; hand: FormAction<unknown> }) {
  const { site, keys, people } = page;
  const at = siteAddress(site.key);
  return (
    <Page
      title="Keys"
      over={[
        { href: '/', name: 'Systems' },
        { href: at, name: site.name },
        { href: `${at}/rota`, name: 'Rota' },
      ]}
      lead={<p>Whoever is called at night has to get in. Never write down here what opens a lock without a key.</p>}
    >
      <Section id="held" title="Who has which">
        {keys.length === 0 ? (
          <p>Nobody has said.</p>
        ) : (
          <Ledger caption="Keys, by name" columns={columns(site.zone)} rows={keys} keyOf={({ key }) => key} />
        )}
      </Section>
      <Section id="hand" title="Hand one on" note="What was said before stays in the record.">
        <PersonForm send={hand} hidden={{ site: site.key }} button="It is so now" done="Noted.">
          <Field label="Key: what it opens" name="key" required maxLength={60} list="keys" />
          <datalist id="keys">
            {keys.map(({ key }) => (
              <option key={key} value={key} />
            ))}
          </datalist>
          <label className={style.holder}>
            Who has it
            <select name="holder" defaultValue="">
              <option value="">nobody: it lies at its place</option>
              {people.map(({ account, name }) => (
                <option key={account} value={account}>
                  {name}
                </option>
              ))}
            </select>
          </label>
          <Field label="Or the place where it lies" name="place" maxLength={80} />
        </PersonForm>
      </Section>
    </Page>
  );
}

function columns(zone: string): Column<KeyRow>[] {
  return [
    { id: 'key', head: 'Key', cell: ({ key }) => key },
    { id: 'holder', head: 'Has it', cell: ({ holder, place }) => holder ?? `nobody: ${place}` },
    { id: 'since', head: 'Since', cell: ({ at }) => instantSaid(at, zone) },
    { id: 'by', head: 'Said by', cell: ({ by }) => by },
  ];
}
