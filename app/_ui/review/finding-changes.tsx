import type { FindingChange } from '#core/review/difference/finding-changes';
import style from './review-difference.module.css';

/** Findings that come and go, each with the causes that come and go under it. */
export function FindingChanges({ findings }: { findings: FindingChange[] }) {
  return (
    <ul className={style.findings} aria-label="Findings that come and go">
      {findings.map(({ id, remedy, before, after, come, go }) => (
        <li key={id}>
          <span className={style.way}>{wayOf(before, after)}</span>
          <div>
            <strong>{remedy}</strong>
            {come.length > 0 ? <p>Comes: {listed(come)}.</p> : null}
            {[...new Set(come.flatMap(saidBy))].map((words) => (
              <p key={words}>{words}</p>
            ))}
            {go.length > 0 ? <p>Goes: {listed(go)}.</p> : null}
          </div>
        </li>
      ))}
    </ul>
  );
}

function wayOf(before: FindingChange['before'], after: FindingChange['after']): string {
  if (before === null) return `new finding, ${after}`;
  if (after === null) return 'finding gone';
  return before === after ? `finding, ${after}` : `finding, ${before} → ${after}`;
}

/** What follows from a cause, where no fault case tells it in its own row. */
function saidBy({ from, consequence }: FindingChange['come'][number]): string[] {
  return 'rule' in from ? [consequence] : [];
}

function listed(lines: FindingChange['come']): string {
  return [...new Set(lines.map(({ cause }) => cause))].join('; ');
}
