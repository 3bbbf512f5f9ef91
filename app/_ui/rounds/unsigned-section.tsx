import Link from '../frame/link';
import { Fold } from '../frame/fold';
import { Section } from '../frame/section';
import { momentSaid } from '../words/moment';
import { roundsAddress, type RoundsView, type UnsignedView } from './round-view';
import style from './rounds.module.css';

/** Rounds that are shown without being asked for: what is due today comes first. */
const AT_ONCE = 1;
/** Systems of a round that are named. */
const NAMED = 3;

const OF_WORDS: Record<UnsignedView['of'], string> = {
  sheet: 'a round sheet',
  timetable: 'by the timetable',
  besides: 'besides the timetable',
};

/** Rounds that were begun and never signed, and that stand in no list any more. */
export function UnsignedSection({ page: { site, unsigned, mayWalk } }: { page: RoundsView }) {
  const { lines, many } = unsigned;
  if (lines.length === 0) return null;
  const list = <Lines lines={lines} site={site} />;
  return (
    <Section
      id="unsigned"
      title="Begun and never signed"
      note={`They stand in no list below. ${mayWalk ? 'Sign each, and say why of what is blank. ' : ''}One leaves once it, or a later one of the same, is signed.`}
    >
      <p>
        <span aria-hidden="true" className={style.wrong}>
          ▲
        </span>{' '}
        {many === 1 ? 'One round was' : `${many} rounds were`} begun and never signed.
        {many > lines.length ? ` The latest ${lines.length} are shown.` : ''}
      </p>
      {lines.length > AT_ONCE ? <Fold title="Which they are, the latest first">{list}</Fold> : list}
    </Section>
  );
}

function Lines({ lines, site }: { lines: readonly UnsignedView[]; site: RoundsView['site'] }) {
  return (
    <ul className={style.log}>
      {lines.map(({ round, name, of, systems, begun }) => (
        <li key={round}>
          <Link className={style.go} href={roundsAddress(site.key, round)}>
            {name}, begun {momentSaid(begun.at, site.zone)} by {begun.by}
          </Link>
          <span className={style.about}>{[OF_WORDS[of], ...namesOf(systems)].join(', ')}</span>
        </li>
      ))}
    </ul>
  );
}

function namesOf(systems: readonly string[]): string[] {
  if (systems.length <= NAMED) return [...systems];
  return [...systems.slice(0, NAMED), `and ${systems.length - NAMED} more`];
}
