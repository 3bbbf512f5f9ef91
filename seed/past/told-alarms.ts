import type { Facility } from '#core/facility/facility';
import type { Told } from './lives';
import type { Raised } from './raised';
import { poolStory, windowStory } from './story';

const MINUTE_MS = 60_000;
const PHONE = 'Alarms, on a phone';

/** What is told of single alarms of a demonstration site. @param today ISO date on which it is shown */
export function toldAt(facility: Facility, today: string): Told {
  const { key, zone } = facility.site;
  const harbour = (raised: Raised) => harbourTold(raised, poolStory(zone, today).pausedMs);
  if (key === 'harbour') return harbour;
  return key === 'mill-lane' ? (raised) => millTold(raised, windowStory(zone, today)) : () => null;
}

function harbourTold({ system, alarm, raisedMs, beganMs }: Raised, pausedMs: number): ReturnType<Told> {
  const after = (minutes: number, person: string, note: string, from = PHONE) => ({
    atMs: raisedMs + minutes * MINUTE_MS,
    person,
    from,
    note,
  });
  if (system === 'touch-pool' && beganMs > pausedMs && beganMs < pausedMs + 240 * MINUTE_MS)
    return after(19, 'ada', 'Nobody answers at the house. On my way.', 'Link of a call, on a phone');
  if (system === 'reef' && alarm === 'flow-lost') return after(3, 'emre', 'Water change: the pumps are off for it.');
  if (system === 'reef' && alarm === 'silent-hall')
    return after(11, 'cleo', 'Unplugged for the vacuum cleaner. Plugged in again, all of it reads.');
  if (system === 'ocean' && alarm === 'oxygen-low')
    return after(12, 'bram', 'Fish breathe as usual on the camera. One reading alone: the cap of the probe?');
  if (system === 'moon-jellies' && alarm === 'return-watts')
    return after(9, 'bram', 'It hums: a worn bearing. The spare is on the shelf, to be changed when the hall is shut.');
  return null;
}

function millTold({ system, beganMs }: Raised, { weldedMs, seenMs }: ReturnType<typeof windowStory>): ReturnType<Told> {
  if (system !== 'window-tank' || beganMs < weldedMs) return null;
  return {
    atMs: seenMs + 9 * MINUTE_MS,
    person: 'joan',
    from: 'Alarms, on a desk computer',
    note: 'Heard it on the round. The heater is unplugged.',
  };
}
