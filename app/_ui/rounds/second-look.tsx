import type { Custom } from '#core/units/shown';
import type { FormAction } from '../form/answer';
import { Fold } from '../frame/fold';
import { Section } from '../frame/section';
import { KeptForm } from '../safeguards/kept-form';
import { EntryLog } from './entry-log';
import { NoteField } from './note-field';
import type { LineView, RoundView } from './round-view';
import style from './rounds.module.css';

interface SecondLookProps {
  page: RoundView;
  units: Custom;
  look: FormAction<unknown>;
}

/** Lines of a kind that are shown without being asked for. */
const AT_ONCE = 12;

/** What somebody who looks at a signed round again reads first, and their signature. */
export function SecondLook({ page, units, look }: SecondLookProps) {
  const { site, round, mayLook, isSigner, places, alike } = page;
  const lines = places.flatMap((place) => place.lines.map((line) => ({ ...line, place: place.name })));
  const groups = [
    { title: 'Other than usual', lines: lines.filter(({ isAbnormal }) => isAbnormal) },
    { title: 'Not done', lines: lines.filter(({ entries }) => entries.at(-1)?.value === null) },
    { title: 'Corrected', lines: lines.filter(({ entries }) => entries.length > 1) },
  ];
  const same = lines.filter(({ check }) => alike.includes(check.key));
  return (
    <Section
      id="second-look"
      title="Second look"
      note={isSigner ? 'By somebody else than who signed it, where there is one.' : undefined}
    >
      {groups.map((group) => (
        <Group key={group.title} title={group.title} lines={group.lines} site={site} units={units} />
      ))}
      <Questions same={same} quick={page.quick} />
      {mayLook && !round.secondLook ? (
        <KeptForm
          action={look}
          hidden={{ site: site.key, round: round.id }}
          button="I have looked at this round"
          done="It is kept."
        >
          <NoteField name="note" title="What follows from it (may stay empty)" />
        </KeptForm>
      ) : null}
    </Section>
  );
}

/** What is asked, and accuses nobody. */
function Questions({ same, quick }: { same: (LineView & { place: string })[]; quick: RoundView['quick'] }) {
  return (
    <>
      {quick === null ? null : (
        <>
          <h3>Entered faster than it is walked: was it written down on the way, and entered afterwards?</h3>
          <p>
            {quick.places} places in {Math.round(quick.tookS)} s; the way between them takes {quick.leastS} s at the
            least.
          </p>
        </>
      )}
      {same.length === 0 ? null : (
        <>
          <h3>The same to the last digit as on the three rounds before: was it read, or copied?</h3>
          <ul>
            {same.map(({ check, place }) => (
              <li key={check.key}>
                {place}: {check.what}
              </li>
            ))}
          </ul>
        </>
      )}
    </>
  );
}

function Group({
  title,
  lines,
  site,
  units,
}: {
  title: string;
  lines: (LineView & { place: string })[];
  site: RoundView['site'];
  units: Custom;
}) {
  if (lines.length === 0)
    return (
      <p>
        {title}: <span className={style.soft}>none.</span>
      </p>
    );
  const list = (
    <ul className={style.log}>
      {lines.map(({ place, ...line }) => (
        <li key={line.check.key}>
          {place}: {line.check.what}
          <EntryLog line={line} site={site} units={units} />
        </li>
      ))}
    </ul>
  );
  if (lines.length > AT_ONCE) return <Fold title={`${title}: ${lines.length} lines`}>{list}</Fold>;
  return (
    <>
      <h3>{title}</h3>
      {list}
    </>
  );
}
