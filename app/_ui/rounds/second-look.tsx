import type { Custom } from '#core/units/shown';
import type { FormAction } from '../form/answer';
import { Fold } from '../frame/fold';
import { Section } from '../frame/section';
import { KeptForm } from '../safeguards/kept-form';
import { EntryLog } from './entry-log';
import { NoteField } from './note-field';
import { Questions } from './questions';
import type { LineView, RoundView } from './round-view';
import style from './rounds.module.css';
import { TakeBack, Taken } from './take-back';

interface SecondLookProps {
  page: RoundView;
  units: Custom;
  look: FormAction<unknown>;
  takeBack: FormAction<unknown>;
}

/** Lines of a kind that are shown without being asked for. */
const AT_ONCE = 12;

/** What somebody who looks at a signed round again reads first, and their signature. */
export function SecondLook({ page, units, look, takeBack }: SecondLookProps) {
  const { site, round, mayLook, isSigner, places } = page;
  const lines = places.flatMap((place) => place.lines.map((line) => ({ ...line, place: place.name })));
  const groups = [
    { title: 'Other than usual', lines: lines.filter(({ isAbnormal }) => isAbnormal) },
    { title: 'Not done', lines: lines.filter(({ entries }) => entries.at(-1)?.value === null) },
    { title: 'Corrected', lines: lines.filter(({ entries }) => entries.length > 1) },
  ];
  return (
    <Section
      id="second-look"
      title="Second look"
      note={isSigner ? 'By somebody else than who signed it, where there is one.' : undefined}
    >
      {groups.map((group) => (
        <Group key={group.title} title={group.title} lines={group.lines} site={site} units={units} />
      ))}
      <Questions page={page} lines={lines} />
      {round.looksTaken.map(({ at, by, note, taken }) => (
        <p key={at}>
          <Taken taken={taken} zone={site.zone}>
            Second look by {by}
            {note ? `: ${note}` : ''}
          </Taken>
        </p>
      ))}
      {round.secondLook && (mayLook || round.secondLook.by === page.self) ? (
        <TakeBack site={site.key} what="second-look" about={round.secondLook.id} takeBack={takeBack} />
      ) : null}
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
