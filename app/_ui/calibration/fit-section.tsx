import type { Custom } from '#core/units/shown';
import type { ChangeActions } from '../describe/answers';
import { Fold } from '../frame/fold';
import { Section } from '../frame/section';
import { comparedSaid, DoubtTable, FoundTable } from './found-table';
import { Stretches } from './stretches';
import { TakeOverForm } from './take-over-form';
import type { CalibrationView, FitView } from './view';
import { FITS } from './words';
import style from './calibration.module.css';

interface FitSectionProps {
  view: CalibrationView;
  fit: FitView;
  units: Custom;
  actions: ChangeActions;
}

/** One figure: what the readings say of it, from which stretches, and the way into the description. */
export function FitSection({ view, fit, units, actions }: FitSectionProps) {
  const { title, note } = FITS[fit.is];
  return (
    <Section id={fit.is} wide title={title} note={note}>
      {fit.from.length > 0 ? <p>Read by {fit.from.join(' and ')}.</p> : null}
      {fit.how ? <p>{fit.how}</p> : null}
      {fit.refused.map((words) => (
        <p key={words}>{words}</p>
      ))}
      <FoundTable fit={fit} units={units} />
      {fit.target ? <p>{comparedSaid(fit)}</p> : null}
      {fit.found ? (
        <Fold title="How well it is known">
          <DoubtTable fit={fit} units={units} />
        </Fold>
      ) : null}
      {fit.stretches.length > 0 ? <StretchesFold view={view} fit={fit} units={units} /> : null}
      {fit.target && view.mayDescribe ? (
        <Fold title="Take it over into the description">
          <TakeOver view={view} fit={fit} units={units} actions={actions} />
        </Fold>
      ) : null}
    </Section>
  );
}

/** The stretches stand in a form of their own; what is left out of other figures stays left out. */
function StretchesFold({ view, fit, units }: Omit<FitSectionProps, 'actions'>) {
  const own = new Set(fit.stretches.map(({ key }) => key));
  const many = fit.stretches.length;
  return (
    <Fold title={`The readings and the curve: ${many} ${many === 1 ? 'stretch' : 'stretches'}`}>
      <form method="get" action={`#${fit.is}`}>
        <input type="hidden" name="days" value={view.days} />
        {view.out
          .filter((key) => !own.has(key))
          .map((key) => (
            <input key={key} type="hidden" name="out" value={key} />
          ))}
        <p>
          Dots are good readings, the line is the curve; below is what is left between the two. Leave out a stretch in
          which something else happened.
        </p>
        <Stretches fit={fit} units={units} />
        <p>
          <button type="submit" className={style.quiet}>
            Work it out without those
          </button>
        </p>
      </form>
    </Fold>
  );
}

function TakeOver({ view, fit, units, actions }: FitSectionProps) {
  const { target } = fit;
  if (!target) return null;
  const { noun, key, value, low, high } = target;
  const fields = {
    site: view.site.key,
    system: view.system.key,
    days: String(view.days),
    out: view.out.join(','),
    is: fit.is,
    untilMs: String(view.untilMs),
    value: String(value),
    low: String(low),
    high: String(high),
  };
  const of = { site: view.site.key, act: 'change', noun, system: view.system.key, key, units } as const;
  return (
    <>
      <p>
        The figure of {target.name} becomes what was found, as measured, with the interval as its plausible range and
        the readings as its source. Everything else stays as described.
      </p>
      {/* Other readings or other stretches begin it anew. */}
      <TakeOverForm key={JSON.stringify(fields)} of={of} fields={fields} actions={actions} />
    </>
  );
}
