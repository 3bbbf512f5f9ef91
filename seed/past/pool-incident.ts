import type { Facility } from '#core/facility/facility';
import { addDays } from '#core/time/add-days';
import { wallClock } from '#core/time/zone';
import { Logbook, type PastIncident } from './incidents';
import type { Life } from './lives';
import type { Series } from './sampled';
import { idFor } from './seeded-id';
import { poolStory } from './story';

const [ADA, BRAM, EMRE, DILYS] = ['ada', 'bram', 'emre', 'dilys'] as const;
const DAY = 1440;

/** The pause of the touch pool that nobody ended: answered, looked into and signed. @param today ISO date */
export function poolIncident(facility: Facility, today: string, life: Life, series: readonly Series[]): PastIncident {
  const { pausedMs, onSceneMs, putRightMs } = poolStory(facility.site.zone, today);
  const book = new Logbook('harbour pool incident', pausedMs);
  const minute = (ms: number) => Math.round((ms - pausedMs) / 60_000);
  firstThings(book, { there: minute(onSceneMs), right: minute(putRightMs) });
  evidence(book, minute(putRightMs), series);
  story(book);
  afterwards(book, minute(putRightMs));
  safeguards(book);
  investigation(book, wallClock(facility.site.zone, pausedMs).date);
  const openedMs = book.at(150);
  return {
    id: idFor(openedMs, 'harbour', 'incident', 'pool'),
    title: 'Ray touch pool without air after a feeding pause',
    system: 'touch-pool',
    life,
    openedMs,
    openedBy: ADA,
    entries: book.entries.sort((a, b) => a.recordedMs - b.recordedMs),
    signatures: [
      { by: BRAM, as: 'lead', atMs: book.at(12 * DAY + 870) },
      { by: ADA, as: 'manager', atMs: book.at(12 * DAY + 1010) },
    ],
  };
}

function firstThings(book: Logbook, { there, right }: { there: number; right: number }): void {
  const late = (minute: number) => Math.max(minute + 1, 151);
  book.write(
    'step',
    there + 1,
    ADA,
    {
      step: 'people-safe',
      note: 'Nothing tripped, floor dry. Told the on-call neighbour site by telephone that I work alone.',
    },
    late(there + 1),
  );
  book.write(
    'step',
    there + 2,
    ADA,
    { step: 'isolate', notDone: 'Nothing to isolate: no leak, no trip.' },
    late(there + 2),
  );
  book.write(
    'step',
    right,
    ADA,
    { step: 'air-on', note: 'Return and waterfall on again at the board; oxygen from the bottle over two diffusers.' },
    late(right),
  );
  book.write('step', right, ADA, { step: 'dosing-off', notDone: 'Nothing is dosed here.' }, late(right));
}

/** Water and figures, taken while everything else went on. */
function evidence(book: Logbook, right: number, series: readonly Series[]): void {
  const near = (sensor: string, minute: number) => valueAt(series, sensor, book.at(minute));
  const late = (minute: number) => Math.max(minute + 1, 151);
  book.write(
    'sample',
    right + 6,
    ADA,
    { bottles: ['chilled', 'frozen'], where: 'Pool, at the steps' },
    late(right + 6),
  );
  const figures = [
    { quantity: 'oxygen', sensor: 'touch-pool/oxygen', value: near('oxygen', right + 8) },
    { quantity: 'temperature', sensor: 'touch-pool/t-pool', value: near('t-pool', right + 8) },
    { quantity: 'ph', sensor: 'touch-pool/ph', value: near('ph', right + 8) },
  ] as const;
  book.write(
    'measurement',
    right + 8,
    ADA,
    { figures: [...figures], where: 'Pool, at the steps, by hand meter' },
    late(right + 8),
  );
}

function valueAt(series: readonly Series[], sensor: string, atMs: number): number {
  const one = series.find(({ system, sensor: key }) => system === 'touch-pool' && key === sensor);
  const i = one?.atMs.findIndex((at) => at >= atMs) ?? -1;
  return Number((one?.values[i] ?? 0).toFixed(1));
}

function story(book: Logbook): void {
  const [witness, device] = ['witness', 'device'] as const;
  book.write(
    'mark',
    0,
    BRAM,
    { mark: 'fault-began', source: device, note: 'watts of the pool return fell to nothing' },
    DAY - 60,
  );
  book.write(
    'log',
    2,
    EMRE,
    { text: 'Rays fed by hand. Both pumps paused at the board for it, as always.', source: witness },
    DAY + 60,
  );
  book.write(
    'log',
    17,
    EMRE,
    {
      text: 'Feeding done. Called to the till, then shut the house. The pumps were not switched on again.',
      source: witness,
    },
    DAY + 65,
  );
  book.write(
    'log',
    95,
    BRAM,
    { text: 'Telephone lay in the car: the call was heard at the front door at nine.', source: witness },
    DAY - 50,
  );
}

function afterwards(book: Logbook, right: number): void {
  const [witness, device] = ['witness', 'device'] as const;
  book.write('mark', 137, ADA, { mark: 'on-scene', source: witness }, 155);
  book.write(
    'log',
    139,
    ADA,
    { text: 'All rays at the surface, breathing fast; two upside down on the floor of the pool.', source: witness },
    158,
  );
  book.write('mark', right, ADA, { mark: 'put-right', source: witness, note: 'both pumps on, water falling' }, 160);
  book.write('mark', right + 34, ADA, { mark: 'normal', source: device }, 240);
  book.write('mark', right + 115, ADA, { mark: 'stood-down', source: witness }, right + 118);
  const group = 'Thornback and cownose rays';
  const none = { dead: 0, putDown: 0, affected: 0, missing: 0, waterL: 0 };
  book.write('loss', DAY - 670, DILYS, { group, ...none, dead: 2, affected: 6 }, DAY - 640);
  book.write(
    'loss',
    DAY - 440,
    BRAM,
    { group, ...none, putDown: 1, note: 'Did not right itself; by the veterinarian.' },
    DAY - 400,
  );
}

function safeguards(book: Logbook): void {
  const say = (safeguard: string, did: 'worked' | 'absent' | 'not-made-for-this', evidence: string, n: number) =>
    book.write('safeguard', 2 * DAY + n, BRAM, { safeguard, did, evidence });
  say(
    'touch-pool/pool-alarms',
    'worked',
    'Oxygen alarm raised at its limit of 4.8 after ten minutes; call taken by the mail server within seconds.',
    1,
  );
  say(
    'touch-pool/pool-heat-needs-flow',
    'worked',
    'Both heaters stayed off while the return stood; sump temperature fell.',
    2,
  );
  say('touch-pool/pool-siphon-break', 'worked', 'Level of the sump rose by its drain-down and no further.', 3);
  say('touch-pool/pool-cut-out-1', 'not-made-for-this', 'Nothing was warm.', 4);
  say('touch-pool/pool-cut-out-2', 'not-made-for-this', 'Nothing was warm.', 5);
  say('touch-pool/pool-level-trip', 'not-made-for-this', 'No water was lost.', 6);
  say('touch-pool/pool-top-off-limit', 'not-made-for-this', 'The float stood high.', 7);
}

function investigation(book: Logbook, day: string): void {
  const write = book.write.bind(book);
  const at = 9 * DAY;
  const design = write('cause', at, BRAM, {
    cause: 'design',
    text: 'The pause of return and waterfall ends only by the hand that began it. Nothing counts the minutes.',
    certainty: 'fact',
  });
  const limit = write('cause', at + 4, BRAM, {
    cause: 'design',
    text: 'The oxygen alarm stands at 4.8 so that it does not chatter: it spoke eighty minutes after the pause.',
    certainty: 'fact',
  });
  write('cause', at + 8, ADA, {
    cause: 'workload',
    text: 'One person fed, sold tickets and shut the house. Whoever is called away comes back to something else.',
    certainty: 'opinion',
  });
  write('action', at + 12, ADA, {
    text: 'A hard timer on the board that ends the feeding pause after twenty minutes, whatever anybody forgets.',
    owner: 'Lead',
    due: addDays(day, 21),
    strength: 'independent-device',
    cause: design,
  });
  write('action', at + 14, ADA, {
    text: 'A blower on another circuit for the touch pool, so that the waterfall is not its only air.',
    owner: 'Manager',
    due: addDays(day, 100),
    strength: 'remove',
    cause: design,
  });
  const round = write('action', at + 16, ADA, {
    text: 'Feeding by hand moves before the closing round, which looks at both pumps after it.',
    owner: 'Lead',
    due: addDays(day, 10),
    strength: 'procedure',
    cause: limit,
  });
  write('action-done', at + DAY, BRAM, {
    action: round,
    proof: 'New feeding times hang in the kitchen; closing round of three evenings shows both pumps running.',
  });
  summaries(book, at);
}

function summaries(book: Logbook, at: number): void {
  const write = book.write.bind(book);
  write('summary', at + 20, ADA, {
    part: 'what-happened',
    text: 'Return and waterfall were paused for feeding and stayed off. Oxygen fell from 6.3 to below 4 in two hours and twenty minutes. The alarm was raised after eighty-eight minutes; the first call was not heard, the second was. Three of twenty-five rays were lost.',
  });
  write('summary', at + 22, ADA, {
    part: 'went-well',
    text: 'The second step of calls did what it is for. The oxygen bottle stood where it should.',
  });
  write('summary', at + 24, ADA, { part: 'lucky', text: 'It was not a Sunday night: nobody would have been on.' });
  write('summary', at + 26, ADA, {
    part: 'elsewhere',
    text: 'Every pause that only a person ends: none other stops all the air of a system.',
  });
}
