import { momentSaid } from '../words/moment';
import type { SheetView } from './sheet-views';

/** Names the loud tests of a sheet that would fall into the quiet hours of the site, and says what is done about it. */
export function QuietSaid({ page: { quiet, sheet, places, site } }: { page: SheetView }) {
  if (!quiet) return null;
  const offered = new Map(places.flatMap(({ checks }) => checks.map(({ key, what }) => [key, what] as const)));
  const own = new Map(sheet.lines.map(({ key, what }) => [key, what] as const));
  const names = quiet.lines.map((key) => own.get(key) ?? offered.get(key) ?? key).join('; ');
  const { why, to } = quiet.in;
  return (
    <p>
      <strong>Loud in quiet hours:</strong> {names}. {quiet.times === 1 ? 'Once' : `${quiet.times} times`} in the months
      ahead, first on {momentSaid(quiet.at, site.zone)}, while it is to be quiet until {momentSaid(to, site.zone)}
      {why === undefined ? '' : ` (${why})`}.{' '}
      {quiet.moved === null
        ? 'The sheet keeps its time, as it asks for more than tests and calibrations, or as no hour within a week is free; the test itself is to wait for an hour that is not quiet.'
        : `A sheet of tests and calibrations alone is put off to the end of the quiet: that time to ${momentSaid(quiet.moved, site.zone)}.`}
    </p>
  );
}
