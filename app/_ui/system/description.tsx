import Link from '../frame/link';
import type { Facility } from '#core/facility/facility';
import type { System } from '#core/facility/system';
import { Fold } from '../frame/fold';
import { siteAddress } from '../frame/site-address';
import { circuitsOf } from '../drawing/system-drawing';
import type { Speech } from '../words/said';
import { AlarmTable } from './alarm-table';
import { figureRows } from './figure-rows';
import { FigureTable } from './figure-table';
import { PlanTable } from './plan-table';
import { SafeguardTable } from './safeguard-table';

interface DescriptionProps {
  facility: Facility;
  system: System;
  speech: Speech;
  /** ISO date the tests are judged on. */
  on: string;
}

/** What the system is, figure by figure, plan by plan, with where every figure comes from. */
export function Description({ facility, system, speech, on }: DescriptionProps) {
  const { units } = speech;
  const room = facility.rooms.find((r) => r.key === system.room);
  const rows = (list: { key: string; name: string }[]) => list.flatMap((thing) => figureRows(thing, thing.name, units));
  const whole = [...figureRows(system, system.name, units), ...(room ? figureRows(room, room.name, units) : [])];
  const circuits = circuitsOf(facility, system);
  return (
    <>
      <Fold title={`Tanks (${system.tanks.length})`}>
        <FigureTable caption="Levels are counted from the running level." rows={rows(system.tanks)} />
      </Fold>
      <Fold title={`Equipment (${system.equipment.length})`}>
        <FigureTable caption="Figures of the equipment" rows={rows(system.equipment)} />
      </Fold>
      <Fold title="Plans">
        <PlanTable system={system} speech={speech} />
      </Fold>
      <Fold title="Safeguards and their tests">
        <SafeguardTable facility={facility} system={system} on={on} />
      </Fold>
      <Fold title={`Alarms (${system.alarms.length})`}>
        <p>
          <Link href={siteAddress(facility.site.key, 'systems', system.key, 'alarms')}>Master alarm list</Link>, with
          priorities, causes, what to do and design problems.
        </p>
        <AlarmTable system={system} speech={speech} />
      </Fold>
      <Fold title={`Stock (${system.stock.length})`}>
        <FigureTable
          caption="Animals"
          rows={system.stock.flatMap((s) => figureRows(s, `${s.count} × ${s.group}`, units))}
        />
      </Fold>
      <Fold title="Water, room, electrical circuits and operating states">
        <FigureTable caption="Water and room" rows={whole} />
        <FigureTable caption="Electrical circuits" rows={rows(circuits)} />
        <FigureTable
          caption="Operating states"
          rows={system.states.flatMap((s) => figureRows(s, s.name.replace('-', ' '), units))}
        />
      </Fold>
    </>
  );
}
