import { readingSaid } from '#core/readings/figures';
import type { Custom } from '#core/units/shown';
import Link from 'next/link';
import { Fold } from '../frame/fold';
import { siteAddress } from '../frame/site-address';
import { EntryLog } from './entry-log';
import { LineForm } from './line-form';
import type { EnterAction } from './place-body';
import type { LineView, RoundView } from './round-view';
import style from './rounds.module.css';
import { valueSaid, whenSaid } from './said';
import { capital } from '../words/capital';

interface SheetLineProps {
  page: RoundView;
  line: LineView;
  units: Custom;
  enter: EnterAction;
}

/** A line of the sheet: what is looked at and why, what was there before, and what stands or is to be entered. */
export function SheetLine({ page, line, units, enter }: SheetLineProps) {
  const { site, round, mayWalk } = page;
  const { check, last, entries } = line;
  const stands = entries.at(-1);
  const form = { site: site.key, round: round.id, line, units, enter };
  return (
    <li>
      <h2 className={style.what}>{check.what}</h2>
      <p className={style.soft}>
        {`${capital(check.why)}.`}
        {last
          ? ` Last: ${valueSaid(check, last.value, units)}, ${whenSaid(last.at, site.zone)}${last.from === 'sensor' ? ' by the sensor' : ''}.`
          : ''}
        {check.kind === 'head-count' ? ` Described: ${check.expected}.` : ''}
        {limitsSaid(line, units)}
      </p>
      {stands ? <EntryLog line={line} zone={site.zone} units={units} /> : null}
      {stands && line.isAbnormal && check.about.system ? (
        <p>
          <Link className={style.go} href={`${siteAddress(site.key)}/incidents/new?system=${check.about.system}`}>
            Open an incident
          </Link>
        </p>
      ) : null}
      {mayWalk && !stands && round.signed === null ? <LineForm key="first" {...form} /> : null}
      {mayWalk && stands && !(check.kind === 'test' && stands.value) ? (
        <Fold title="Correct it">
          <LineForm key={stands.id} {...form} corrects={stands.id} />
        </Fold>
      ) : null}
    </li>
  );
}

function limitsSaid({ check }: LineView, units: Custom): string {
  if (check.kind !== 'number' || !check.alarm) return '';
  const { above, below } = check.alarm;
  const said = (value: number) => readingSaid(check.quantity, units, value);
  if (above !== undefined && below !== undefined) return ` Alarm below ${said(below)} and above ${said(above)}.`;
  return above !== undefined ? ` Alarm above ${said(above)}.` : ` Alarm below ${said(below ?? 0)}.`;
}
