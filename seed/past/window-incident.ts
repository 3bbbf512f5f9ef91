import type { Facility } from '#core/facility/facility';
import { addDays } from '#core/time/add-days';
import { wallClock } from '#core/time/zone';
import { Logbook, type PastIncident } from './incidents';
import type { Life } from './lives';
import { idFor } from './seeded-id';
import { windowStory } from './story';

const [IVO, JOAN] = ['ivo', 'joan'] as const;
const DAY = 1440;
/** Minute from the round on at which it was opened. */
const OPENED = 15;

/** The heater of the window tank that heated on: still looked into. @param today ISO date on which it is shown */
export function windowIncident(facility: Facility, today: string, life: Life): PastIncident {
  const { zone } = facility.site;
  const { weldedMs, seenMs, unpluggedMs } = windowStory(zone, today);
  const book = new Logbook('mill-lane window incident', seenMs);
  const off = (unpluggedMs - seenMs) / 60_000;
  firstThings(book, off);
  story(book, { weldedMs, seenMs, off });
  aftermath(book, wallClock(zone, seenMs).date);
  const openedMs = book.at(OPENED);
  return {
    id: idFor(openedMs, 'mill-lane', 'incident', 'window'),
    title: 'Heater of the window tank stuck on',
    system: 'window-tank',
    life,
    openedMs,
    openedBy: JOAN,
    entries: book.entries.sort((a, b) => a.recordedMs - b.recordedMs),
    signatures: [],
  };
}

function firstThings(book: Logbook, off: number): void {
  const write = book.write.bind(book);
  write(
    'step',
    1,
    JOAN,
    { step: 'people-safe', note: 'Dry hands, dry floor; plug is above the tank. Told the lead by telephone.' },
    OPENED + 1,
  );
  write('step', off, JOAN, { step: 'isolate', note: 'Heater unplugged, cord tied up.' }, OPENED + 2);
  write(
    'step',
    off + 2,
    JOAN,
    { step: 'air-on', note: 'Spray bar ran all the time; an air stone besides.' },
    OPENED + 2,
  );
  write('step', off + 2, JOAN, { step: 'dosing-off', notDone: 'Nothing is dosed here.' }, OPENED + 3);
  write('sample', off + 4, JOAN, { bottles: [], notDone: 'No bottles in the shop on a Sunday.' }, OPENED + 4);
}

function story(book: Logbook, { weldedMs, seenMs, off }: { weldedMs: number; seenMs: number; off: number }): void {
  const write = book.write.bind(book);
  const began = (weldedMs - seenMs) / 60_000;
  write(
    'mark',
    began - 30,
    JOAN,
    {
      mark: 'fault-began',
      latest: weldedMs + 45 * 60_000,
      source: 'inferred',
      note: 'the temperature never turned after it',
    },
    OPENED + 9,
  );
  write(
    'log',
    0,
    JOAN,
    {
      text: 'Window warm to the hand on the closing round. The dial says 25, the thermometer nearly 29. The buzzer sounds behind the counter; with the till radio on I had not heard it.',
      source: 'witness',
    },
    OPENED + 6,
  );
  write(
    'log',
    off,
    JOAN,
    { text: 'Heater still hot with its dial turned down: it heats whatever it is told.', source: 'witness' },
    OPENED + 7,
  );
  write('mark', off, JOAN, { mark: 'put-right', source: 'witness', note: 'unplugged' }, OPENED + 8);
}

function aftermath(book: Logbook, sunday: string): void {
  const write = book.write.bind(book);
  const none = { putDown: 0, affected: 0, missing: 0, waterL: 0 };
  write(
    'loss',
    DAY - 390,
    IVO,
    { group: 'Tetras and dwarf cichlids', dead: 1, ...none, note: 'A dwarf cichlid; whether of the heat is not sure.' },
    DAY - 380,
  );
  const proof = 'The water stood above 28 for more than half an hour and the heater drew on. Last tried in February.';
  write('safeguard', DAY - 60, IVO, { safeguard: 'window-tank/window-cut-out', did: 'failed', evidence: proof });
  const due = addDays(sunday, 12);
  write('action', DAY - 50, IVO, {
    text: 'A new cut-out, tried before it is counted on, and the old one opened on the bench.',
    owner: 'Lead',
    due,
    strength: 'independent-device',
  });
}
