import Link from '../frame/link';
import { Page } from '../frame/page';
import { Section } from '../frame/section';
import { siteAddress } from '../frame/site-address';
import { timeSaid } from '../words/moment';
import { Mark } from './change-effect';
import { daySaid, ON_WORDS } from './rota-view';
import style from './week.module.css';
import { clockFormat } from '../words/clock-format';

interface WeekPersonView {
  name: string;
  kind: 'on-site' | 'on-call';
  insteadOf: string | null;
}

interface WeekDayView {
  date: string;
  hours: number;
  lines: { from: number; people: WeekPersonView[] }[];
  away: string[];
}

export interface WeekView {
  site: { key: string; name: string; zone: string };
  now: number;
  days: WeekDayView[];
  before: string;
  after: string;
}

/** A week of the rota as a time table: the days side by side, or below one another on a phone, each with its times down the left. */
export function WeekBody({ page: { site, now, days, before, after } }: { page: WeekView }) {
  const at = siteAddress(site.key, 'rota/week');
  const [first, last] = [days.at(0)?.date ?? '', days.at(-1)?.date ?? ''];
  return (
    <Page
      title="The week"
      over={[
        { href: '/', name: 'Systems' },
        { href: siteAddress(site.key), name: site.name },
        { href: siteAddress(site.key, 'rota'), name: 'Rota' },
      ]}
      lead={
        <>
          <p>Who is on from each time to the next, after leave and swaps. Times are those of {site.zone}.</p>
          <nav aria-label="Weeks" className={style.weeks}>
            <Link href={`${at}?from=${before}`}>The week before</Link>
            <Link href={at}>This week</Link>
            <Link href={`${at}?from=${after}`}>The week after</Link>
          </nav>
        </>
      }
    >
      <Section id="week" wide title={`${daySaid(first)} to ${daySaid(last)}`}>
        <ol className={style.week}>
          {days.map((day) => (
            <Day key={day.date} day={day} zone={site.zone} now={now} />
          ))}
        </ol>
      </Section>
    </Page>
  );
}

function Day({ day: { date, hours, lines, away }, zone, now }: { day: WeekDayView; zone: string; now: number }) {
  const place = lines.findIndex(
    ({ from }, at) => from <= now && now < (lines[at + 1]?.from ?? from + hours * 3_600_000),
  );
  const isToday = clockFormat('sv-SE', { timeZone: zone }).format(now) === date;
  return (
    <li className={style.day}>
      <h3>
        {daySaid(date)}
        {hours === 24 ? null : <span className={style.about}>{hours} hours: the clocks change</span>}
      </h3>
      <ol>
        {lines.map(({ from, people }, at) => (
          <li key={from} className={style.line}>
            <time dateTime={new Date(from).toISOString()}>{timeSaid(from, zone)}</time>
            <div>
              {people.length === 0 ? (
                <p>
                  <Mark /> <strong>nobody</strong>
                </p>
              ) : (
                people.map((one) => <p key={`${one.name} ${one.kind}`}>{personSaid(one)}</p>)
              )}
              {isToday && at === place ? <p className={style.about}>now</p> : null}
            </div>
          </li>
        ))}
      </ol>
      {away.length > 0 ? <p className={style.about}>On leave: {away.join(', ')}</p> : null}
    </li>
  );
}

function personSaid({ name, kind, insteadOf }: WeekPersonView): string {
  return `${name}, ${ON_WORDS[kind]}${insteadOf === null ? '' : `, for ${insteadOf}`}`;
}
