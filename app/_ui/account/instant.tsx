import { instantSaid } from '../words/instant';

/** An instant in UTC: an account belongs to no site, and so to no zone. */
export function Instant({ at }: { at: Date }) {
  const iso = at.toISOString();
  return <time dateTime={iso}>{`${instantSaid(iso, 'UTC')} UTC`}</time>;
}
