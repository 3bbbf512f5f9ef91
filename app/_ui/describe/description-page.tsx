import Link from '../frame/link';
import { Page } from '../frame/page';
import { Section } from '../frame/section';
import { siteAddress } from '../frame/site-address';
import { withArticle } from '../words/article';
import { newAddress, thingAddress } from './thing-address';
import style from './describe.module.css';
import { capital } from '../words/capital';

interface Thing {
  key: string;
  name: string;
  /** What it is in a word; may be empty. */
  what: string;
}

interface ThingList {
  noun: string;
  one: string;
  things: Thing[];
}

interface Part {
  system: { key: string; name: string } | null;
  lists: ThingList[];
}

/** What the list of everything is made from. */
export interface DescriptionPageData {
  site: { key: string; name: string };
  parts: Part[];
  mayDescribe: boolean;
}

/** Everything a site is described by: its own things first, then system by system. */
export function DescriptionPage({ page }: { page: DescriptionPageData }) {
  const { site, parts, mayDescribe } = page;
  return (
    <Page
      title={`${site.name}, as described`}
      over={[
        { href: '/', name: 'Systems' },
        { href: siteAddress(site.key), name: site.name },
      ]}
      lead={
        <p>
          What the reviews are computed from. Whatever is changed here is shown with what it does to the reviews before
          it is kept. <Link href={thingAddress(site.key, 'site', null, site.key)}>The site itself</Link>
        </p>
      }
    >
      {parts.map((part) => (
        <PartOf key={part.system?.key ?? ''} site={site.key} part={part} mayDescribe={mayDescribe} />
      ))}
    </Page>
  );
}

function PartOf({ site, part: { system, lists }, mayDescribe }: { site: string; part: Part; mayDescribe: boolean }) {
  const at = system?.key ?? null;
  const own = system ? (
    <Link href={thingAddress(site, 'system', null, system.key)}>Its kind, room and water</Link>
  ) : undefined;
  return (
    <Section id={`of-${at ?? 'the-site'}`} title={system?.name ?? 'The site'} note={own}>
      <dl className={style.lists}>
        {lists.map(({ noun, one, things }) => (
          <div key={noun}>
            <dt>
              {several(one)} <span className={style.count}>{things.length}</span>
            </dt>
            <dd>
              <ul className={things.length > 3 ? style.many : undefined}>
                {things.map(({ key, name, what }) => (
                  <li key={key}>
                    <Link href={thingAddress(site, noun, at, key)}>{name}</Link>
                    {what ? <span className={style.what}> {what}</span> : null}
                  </li>
                ))}
                {mayDescribe ? (
                  <li>
                    <Link className={style.add} href={newAddress(site, noun, at)}>
                      Add {withArticle(one)}
                    </Link>
                  </li>
                ) : null}
              </ul>
            </dd>
          </div>
        ))}
      </dl>
    </Section>
  );
}

/** What several of them are called, as a heading: `Pieces of equipment`, `Electrical circuits`. */
function several(one: string): string {
  const [head = '', ...rest] = one.split(' of ');
  const heads = head === 'person' ? 'people' : head === 'stock' ? head : `${head}s`;
  return [capital(heads), ...rest].join(' of ');
}
