import 'server-only';
import type { z } from 'zod';
import type { Channel } from '#core/alarms/channels';
import { ok, type Result, refused } from '#core/result';
import { accountNames } from '#data/accounts/names';
import { type CallTold, callsOf, eventsOf, type LifeEvent } from '#data/alarms/life';
import { readBy } from '#data/alarms/read-by';
import { findOccurrence, listExplained, type OccurrenceTold } from '#data/alarms/told';
import { alarmPlace } from '#shape/alarms/requests';
import { now } from '../clock';
import { may } from '../gate/may';
import type { Refusal } from '../gate/refusal';
import { siteFor } from '../gate/site-for';
import type { Who } from '../gate/who';
import { type AlarmLine, alarmLines } from './alarm-lines';

/** Something in the life of an alarm, as its log tells it. Instants in ISO, UTC. */
export type LogLine =
  /** `by`: whoever read the value, where a person did. */
  | { what: 'began'; at: string; value: number | null; by: string | null }
  | {
      what: LifeEvent['kind'];
      at: string;
      by: string | null;
      from: string | null;
      note: string | null;
      detail: LifeEvent['detail'];
    }
  | { what: 'called'; at: string; names: string[]; channel: Channel; why: CallTold['why']; step: number }
  | {
      what: 'attempt';
      at: string;
      names: string[];
      channel: Channel;
      result: CallTold['attempts'][number]['result'];
      detail: string | null;
    };

/** One time that an alarm was raised, with all that became of it. */
export interface AlarmPage {
  site: { key: string; name: string; zone: string };
  line: AlarmLine;
  log: LogLine[];
  /** Its first cause, and what is folded under it. */
  cause: { id: string; name: string } | null;
  explains: { id: string; name: string; state: AlarmLine['state']; again: number }[];
  mayAcknowledge: boolean;
  mayShelve: boolean;
  mayOpenIncident: boolean;
}

export const getAlarmShape = alarmPlace;

/** The whole life of an alarm, from one time that it was raised. Looking at it changes nothing. */
export async function getAlarm(
  who: Who,
  { site: key, occurrence }: z.output<typeof getAlarmShape>,
): Promise<Result<AlarmPage, Refusal>> {
  const found = await siteFor(who, 'see', key);
  if (!found.ok) return found;
  const { id: siteId, name, zone } = found.value;
  const told = await findOccurrence(siteId, occurrence);
  if (!told) return refused({ why: 'not-found', what: 'alarm' });
  const [line] = await alarmLines(siteId, [told], now());
  if (!line) throw new Error(`Alarm ${occurrence} has no line`);
  const [events, calls] = await Promise.all([eventsOf(siteId, occurrence), callsOf(siteId, [occurrence])]);
  const { sensorId } = told.definition;
  const reader = sensorId === undefined ? null : await readBy(siteId, sensorId, told.beganAt);
  const people = [
    ...(reader === null ? [] : [reader]),
    ...events.flatMap(({ by }) => by ?? []),
    ...calls.map(({ accountId }) => accountId),
  ];
  const names = await accountNames(people);
  const nameOf = (id: string) => names.get(id) ?? id;
  const by = reader === null ? null : nameOf(reader);
  const began: LogLine = { what: 'began', at: line.beganAt, value: line.value, by };
  return ok({
    site: { key, name, zone },
    line,
    log: together(
      inOrder([
        began,
        ...events.map((one) => eventLine(one, nameOf)),
        ...calls.flatMap((one) => callLines(one, nameOf)),
      ]),
    ),
    ...(await cascadeOf(siteId, told)),
    mayShelve: may(who, 'shelve-alarm', key),
    mayAcknowledge: may(who, 'acknowledge', key),
    mayOpenIncident: may(who, 'log-incident', key),
  });
}

/** What explains a time that an alarm was raised, and what it explains. */
async function cascadeOf(
  siteId: string,
  { id, causeId }: OccurrenceTold,
): Promise<Pick<AlarmPage, 'cause' | 'explains'>> {
  const cause = causeId === null ? null : await findOccurrence(siteId, causeId);
  const explained = await listExplained(siteId, id);
  return {
    cause: cause && { id: cause.id, name: cause.definition.name },
    explains: explained.map((one) => ({ id: one.id, name: one.definition.name, state: one.state, again: one.again })),
  };
}

function eventLine({ kind, at, by, from, note, detail }: LifeEvent, nameOf: (id: string) => string): LogLine {
  return { what: kind, at: at.toISOString(), by: by === null ? null : nameOf(by), from, note, detail };
}

function callLines(
  { accountId, channel, madeAt, why, step, attempts }: CallTold,
  nameOf: (id: string) => string,
): LogLine[] {
  const names = [nameOf(accountId)];
  return [
    { what: 'called', at: madeAt.toISOString(), names, channel, why, step },
    ...attempts.map(
      ({ atMs, result, detail }): LogLine => ({
        what: 'attempt',
        at: new Date(atMs).toISOString(),
        names,
        channel,
        result,
        detail,
      }),
    ),
  ];
}

/** By time; what fell together in the order given: what began before what was done about it. */
function inOrder(lines: LogLine[]): LogLine[] {
  return lines
    .map((line, place) => ({ line, place }))
    .sort((a, b) => (a.line.at < b.line.at ? -1 : a.line.at > b.line.at ? 1 : a.place - b.place))
    .map(({ line }) => line);
}

/** ms within which the same happened to several people together. Common practice, no source. */
const TOGETHER_MS = 10_000;

/** Lines in which the same happened to several people, one after the other at once, as one: that of the first of them. */
function together(lines: readonly LogLine[]): LogLine[] {
  const found: LogLine[] = [];
  for (const line of lines) {
    // Ways to the same people alternate: what is alike is looked for among all that was said at once.
    const from = found.findLastIndex((one) => !('names' in one)) + 1;
    const before = found.slice(from).find((one) => isAlike(one, line));
    if (before && 'names' in before && 'names' in line) before.names.push(...line.names);
    else found.push('names' in line ? { ...line, names: [...line.names] } : line);
  }
  return found;
}

function isAlike(one: LogLine, other: LogLine): boolean {
  const said = (line: LogLine) => JSON.stringify({ ...line, at: '', names: [] });
  return said(one) === said(other) && Date.parse(other.at) - Date.parse(one.at) <= TOGETHER_MS;
}
