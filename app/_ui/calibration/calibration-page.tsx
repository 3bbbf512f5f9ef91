import type { Custom } from '#core/units/shown';
import type { ChangeActions } from '../describe/answers';
import { Page } from '../frame/page';
import { siteAddress } from '../frame/site-address';
import { FitSection } from './fit-section';
import type { CalibrationView } from './view';
import style from './calibration.module.css';

interface CalibrationPageProps {
  view: CalibrationView;
  units: Custom;
  actions: ChangeActions;
}

/** Days of readings that can be looked at. */
const DAYS = [7, 14, 30, 60];

/** What the readings of a system say of the figures it is described by. */
export function CalibrationPageBody({ view, units, actions }: CalibrationPageProps) {
  const { site, system, days, first, last } = view;
  return (
    <Page
      title="Calibration from readings"
      over={[
        { href: '/', name: 'Systems' },
        { href: siteAddress(site.key), name: site.name },
        { href: siteAddress(site.key, 'systems', system.key), name: system.name },
      ]}
      lead={
        <>
          <p>
            What the good readings of {system.name} from {first} to {last} say of figures that are hard to measure.
            Times are those of {site.zone}.
          </p>
          <p>
            Begin with evaporation: while it is not known, heat loss is known little better. Nothing here enters the
            description by itself.
          </p>
        </>
      }
    >
      <form method="get" className={style.choices}>
        <label>
          Readings of the last{' '}
          <select name="days" defaultValue={String(days)}>
            {DAYS.map((many) => (
              <option key={many} value={many}>
                {many} days
              </option>
            ))}
          </select>
        </label>
        <button type="submit" className={style.quiet}>
          Look at these
        </button>
      </form>
      {view.fits.map((fit) => (
        <FitSection key={fit.is} view={view} fit={fit} units={units} actions={actions} />
      ))}
    </Page>
  );
}
