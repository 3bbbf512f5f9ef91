import { Mark, Spans } from './change-effect';
import { ON_WORDS, type RotaView } from './rota-view';

/** Competences that nobody who is on has at some time. */
export function LackingList({ lacking, zone }: { lacking: RotaView['lacking']; zone: string }) {
  return lacking.map(({ name, holders, spans }) => (
    <div key={name}>
      <p>
        <Mark /> <strong>Nobody who is on may: {name}</strong>{' '}
        {holders.length === 0 ? '(nobody has it)' : `(only for ${holders.join(', ')})`}:
      </p>
      <Spans spans={spans} zone={zone} />
    </div>
  ));
}

/** Who is on at two sites at once, or is to be at one sooner than the way from the other takes. */
export function TwoSitesList({ twoSites, zone }: { twoSites: RotaView['twoSites']; zone: string }) {
  const pairs = [...new Set(twoSites.map(pairOf))];
  return pairs.map((pair) => {
    const all = twoSites.filter((one) => pairOf(one) === pair);
    const [first] = all;
    if (!first) return null;
    const { name, here, there, wayMin } = first;
    const site = first.site ?? 'another site';
    const between = all.filter(({ isBetween }) => isBetween);
    const both = all.filter(({ isBetween }) => !isBetween);
    return (
      <div key={pair}>
        {both.length > 0 ? (
          <>
            <p>
              <Mark /> <strong>{name} answers two sites at once</strong>: {ON_WORDS[here]} here and {ON_WORDS[there]} at{' '}
              {site}. {waySaid(wayMin)} Whoever goes to one leaves the other with nobody, in:
            </p>
            <Spans spans={both} zone={zone} />
          </>
        ) : null}
        {between.length > 0 ? (
          <>
            <p>
              <Mark /> <strong>{name} cannot be there in time</strong>: one duty ends and the other begins before the{' '}
              {wayMin} minutes to or from {site} are over, in:
            </p>
            <Spans spans={between} zone={zone} />
          </>
        ) : null}
      </div>
    );
  });
}

function pairOf({ name, site }: RotaView['twoSites'][number]): string {
  return `${name}\n${site ?? ''}`;
}

function waySaid(wayMin: number | null): string {
  return wayMin === null
    ? 'How far it is between them is not described (the site, ways to other sites): the cover counts as if it were nothing.'
    : `Between them lie ${wayMin} minutes.`;
}
