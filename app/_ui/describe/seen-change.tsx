import { isSameReview } from '#core/review/review-difference';
import { FindingChanges } from '../review/finding-changes';
import { ReviewDifferenceView } from '../review/review-difference';
import type { News, Seen } from './answers';
import style from './describe.module.css';

interface SeenChangeProps {
  seen: Seen;
  news: readonly News[];
}

/** What a change would make different: in the description, and in the reviews as far as that is known. */
export function SeenChange({ seen, news }: SeenChangeProps) {
  const { groups, clashes, testAgain, touched } = seen;
  if (groups.length === 0 && testAgain.length === 0) return null;
  const same = news.flatMap((one) => (one.is === 'system' && !isTelling(one) ? [one.name] : []));
  return (
    <div className={style.answer}>
      <h2>{groups.length > 0 ? 'What it changes in the description' : 'What has to be done again'}</h2>
      {clashes.length > 0 ? (
        <p>
          <strong>Changed by somebody else since you opened this form: {clashes.join(', ')}.</strong> Keeping yours
          replaces what they entered.
        </p>
      ) : null}
      {groups.map((group) => (
        <section key={group.system ?? ''} aria-label={group.name} className={style.group}>
          <h3>{group.name}</h3>
          <ul>
            {group.changes.map((change) => (
              <li key={change.path}>{change.words}</li>
            ))}
          </ul>
        </section>
      ))}
      {testAgain.length > 0 ? (
        <p>Tested with the one that goes, so to be tested again: {testAgain.join(', ')}.</p>
      ) : null}
      {touched > 0 ? <h2>What it changes in the reviews</h2> : null}
      {news.filter(isTelling).map((one) => (
        <NewsOf key={one.is === 'system' ? one.key : one.is} news={one} />
      ))}
      {same.length > 0 ? <p>The reviews of {same.join(', ')} say the same with it.</p> : null}
    </div>
  );
}

/** Whether there is more to tell of it than that the review says the same. */
function isTelling(news: News): boolean {
  return news.is !== 'system' || !isSameReview(news.difference);
}

function NewsOf({ news }: { news: News }) {
  switch (news.is) {
    case 'progress':
      return (
        <p>
          Working out {news.name}
          {news.of > 0 ? `: ${news.done} of ${news.of} fault cases` : ''}…
        </p>
      );
    case 'system':
      return (
        <section aria-label={`Review of ${news.name}`} className={style.group}>
          <h3>{news.name}</h3>
          <ReviewDifferenceView difference={news.difference} />
        </section>
      );
    case 'site':
      return (
        <section aria-label="Findings about the site" className={style.group}>
          <h3>The site</h3>
          <FindingChanges findings={news.findings} />
        </section>
      );
    case 'not-known':
      return (
        <p>
          {news.names.length > 0 ? `Not known yet for ${news.names.join(', ')}: ` : 'Not known yet: '}
          {news.why === 'late' ? 'it takes longer than a form can wait' : 'working it out broke off'}. The change may be
          kept all the same; the reviews then follow by themselves.
        </p>
      );
  }
}
