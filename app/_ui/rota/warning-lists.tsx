import { Mark, Spans } from './change-effect';
import { ON_WORDS, type RotaView } from './rota-view';

/** Competences that nobody who is on has at some time. */
export function LackingList({ lacking, zone }: { lacking: RotaView['lacking']; zone: string }) {
  return lacking.map(({ name, holders, spans }) => (
    <div key={name}>
      <p>
        <Mark /> <strong>Nobody who is on may: {name}</strong>{' '}
        {holders.length === 0 ? '(nobody has it)' : `(${holders.join(', ')} alone, or it has run out)`}, in:
      </p>
      <Spans spans={spans} zone={zone} />
    </div>
  ));
}

/** Who is on at two sites at once: whoever goes to one leaves the other. */
export function TwoSitesList({ twoSites, zone }: { twoSites: RotaView['twoSites']; zone: string }) {
  const pairs = [...new Set(twoSites.map(({ name, site }) => `${name}\n${site ?? ''}`))];
  return pairs.map((pair) => {
    const all = twoSites.filter(({ name, site }) => `${name}\n${site ?? ''}` === pair);
    const [first] = all;
    if (!first) return null;
    return (
      <div key={pair}>
        <p>
          <Mark /> <strong>{first.name} answers two sites at once</strong>: {ON_WORDS[first.here]} here and{' '}
          {ON_WORDS[first.there]} at {first.site ?? 'another site'}. Whoever goes to one leaves the other with nobody,
          in:
        </p>
        <Spans spans={all} zone={zone} />
      </div>
    );
  });
}
