import type { SummaryCase } from '#core/review/summary';
import { type ListedSystem, summaryIn } from './system-row';
import style from './systems-table.module.css';

/** How it stands, in a sentence. */
export function SystemsLead({ systems }: { systems: readonly ListedSystem[] }) {
  const reviews = systems.flatMap(({ review }) => summaryIn(review)?.worst ?? []);
  if (reviews.length === 0) return null;
  const losing = reviews.filter(({ claimed }) => losesAnimals(claimed)).length;
  const more = reviews.filter(({ tested }) => losesAnimals(tested)).length - losing;
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

function losesAnimals({ verdict, harm }: SummaryCase): boolean {
  return harm?.class === 'animals' && GRAVE.has(verdict);
}
