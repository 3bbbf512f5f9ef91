import { instantSaid } from '../words/instant';
import { lasting } from '../words/lasting';
import { type Fact, Facts } from './facts';
import { type BackupsView, bytesSaid } from './machine-view';
import style from './machine.module.css';

/** The last good backup, what went wrong since, and how one is made and used by hand. */
export function Backups({ backups }: { backups: BackupsView }) {
  return (
    <>
      <Facts facts={factsOf(backups)} />
      <p>
        A backup is one file that holds every site. Keep copies on another machine: the disk that fails takes what lies
        on it along. Whoever has the file can read everything in it.
      </p>
      <dl className={style.commands}>
        <dt>To make one by hand, while Holdfast runs</dt>
        <dd>
          <code>npm run -s backup -- FILE</code>
        </dd>
        <dt>To restore one, into an empty data folder or database</dt>
        <dd>
          <code>npm run -s restore -- FILE</code>
        </dd>
      </dl>
    </>
  );
}

function factsOf({ state, last, problem, nextAt }: BackupsView): Fact[] {
  const facts: Fact[] = [{ name: 'Last good one', value: lastWords(last), isAbnormal: state !== 'good' }];
  if (last)
    facts.push(
      { name: 'Its size', value: bytesSaid(last.bytes) },
      { name: 'It lies in', value: <Path>{last.path}</Path> },
    );
  if (problem)
    facts.push({
      name: 'Failed since',
      value: `${instantSaid(problem.at, 'UTC')}: ${problem.words}`,
      isAbnormal: true,
    });
  facts.push({
    name: 'Next',
    value: nextAt === null ? 'never: daily backups are switched off' : instantSaid(nextAt, 'UTC'),
    isAbnormal: nextAt === null,
  });
  return facts;
}

function lastWords(last: BackupsView['last']): string {
  return last === null ? 'none yet' : `${instantSaid(last.at, 'UTC')}, ${lasting(last.ageS)} ago`;
}

/** A path breaks anywhere rather than push the page wide. */
function Path({ children }: { children: string }) {
  return <span className={style.path}>{children}</span>;
}
