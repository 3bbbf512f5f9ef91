import type { SystemRow } from './system-row';
import style from './systems-table.module.css';

/** How it stands, in a sentence. */
export function SystemsLead({ rows }: { rows: SystemRow[] }) {
  const reviews = rows.flatMap(({ review }) => (review ? [review] : []));
  if (reviews.length === 0) return null;
  const losing = reviews.filter(({ claimed }) => claimed.befalls === 'animals' && GRAVE.has(claimed.verdict)).length;
  const more =
    reviews.filter(({ tested }) => tested.befalls === 'animals' && GRAVE.has(tested.verdict)).length - losing;
  return (
    <p className={style.lead}>
      Of {reviews.length === 1 ? 'the one system' : `the ${reviews.length} systems`} reviewed,{' '}
      {losing === 0 ? 'none has' : <strong>{losing === 1 ? '1 has' : `${losing} have`}</strong>} a single fault that
      would lose animals, at some hours of the week at least, before anybody could put it right, even if every safeguard
      works as claimed.{' '}
      {more > 0 ? `Counting only on safeguards that are tested, ${more} more ${more === 1 ? 'has' : 'have'}.` : null}
    </p>
  );
}

const GRAVE: ReadonlySet<string> = new Set(['no-warning', 'too-late', 'some-hours']);
