import type { Facility } from '#core/facility/facility';
import { DAYS } from '#core/facility/site';
import { instantOf, wallClock } from '#core/time/zone';
import { now } from '#server/clock';
import { cutOut } from './build-equipment';
import { entered } from './given';
import { round } from './build-facility';
import { safeguard } from './build-system';
import { smallFacility, smallSystem } from './small-facility';

/** A site whose round `morning` is due now, with a cut-out that was never tested and an alarm on its temperature. */
export function siteWithRoundDue(): { facility: Facility; due: string } {
  const zone = 'Europe/London';
  const { date, time } = wallClock(zone, now().getTime());
  const base = smallSystem();
  const equipment = base.equipment.map((one) =>
    one.type === 'heater'
      ? { ...one, ratedW: entered(2000), plan: { ...one.plan, cutOuts: [cutOut({ safeguard: 'cut-out' })] } }
      : one,
  );
  const system = {
    ...base,
    equipment,
    safeguards: [safeguard({ key: 'cut-out', name: 'Cut-out', tests: [] })],
    alarms: [
      {
        key: 'warm',
        name: 'Too warm',
        on: { kind: 'sensor' as const, sensor: 'display-temperature', above: 27 },
        delayS: 60,
        deadBand: 0.3,
        answeredBy: 'rota' as const,
      },
    ],
  };
  // Walked while somebody is there, and seeing less: the one that is due now is not made good by them.
  const sees = ['equipment', 'temperature', 'animals'] as const;
  const seen = ['08:30', '17:00'].map((at, index) =>
    round({ key: `look-${index}`, name: 'A look', at, sees: [...sees] }),
  );
  const facility = { ...smallFacility(system), rounds: [round({ days: [...DAYS], at: time }), ...seen] };
  return { facility, due: new Date(instantOf(zone, date, time)).toISOString() };
}
