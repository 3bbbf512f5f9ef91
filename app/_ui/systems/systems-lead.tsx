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
      {losing === 0 ? 'None' : <strong>{losing}</strong>} of {reviews.length} reviewed systems{' '}
      {losing === 1 ? 'has' : 'have'} a single fault that loses animals, at some hour of the week at least, before
      anybody can put it right, even if every safeguard works as claimed.{' '}
      {more > 0 ? `Counting only on safeguards that are tested, ${more} more ${more === 1 ? 'does' : 'do'}.` : null}
    </p>
  );
}

const GRAVE: ReadonlySet<string> = new Set(['no-warning', 'too-late', 'some-hours']);
