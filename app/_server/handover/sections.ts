import 'server-only';
import type { Shown, ShownLine } from '#core/handover/shown';
import type { Facility } from '#core/facility/facility';
import { noticeWords } from '#core/notices/kinds';
import { isOff } from '#core/plans/credit';
import { standingOf as dueStanding } from '#core/plans/due';
import { signingWords } from '#core/states/signing';
import { authorisedUntil } from '#core/states/state-end';
import type { OccurrenceTold } from '#data/alarms/told';
import type { SuppressedTold } from '#data/alarms/suppressions';
import type { AnimalWatchRow } from '#data/handover/animal-watches';
import type { CallOutRow } from '#data/call-outs/call-outs';
import type { NoticeRow } from '#data/notices/notices';
import type { SignatureRow } from '#data/states/signatures';
import type { StateRun } from '#data/states/states';
import { standingOf } from '../call-outs/standing';

/** A line with what most lines leave out. */
export function line(what: string, more: Partial<ShownLine> = {}): ShownLine {
  return { what, where: null, more: null, since: null, until: null, who: [], isAbnormal: false, ...more };
}

/** An instant as the page keeps it. */
export function iso(at: Date | number): string {
  return new Date(at).toISOString();
}

const spoken = (name: string) => name.replaceAll('-', ' ');

/** Who is in alone, and until when. */
export function aloneSection(open: readonly CallOutRow[], at: Date): ShownLine[] {
  return open.map((one) => {
    const { state, untilMs } = standingOf(one, at);
    const isAbnormal = state === 'overdue';
    const more = isAbnormal ? 'not back' : null;
    return line(one.place, { more, since: iso(one.begunAt), until: iso(untilMs), who: [one.accountId], isAbnormal });
  });
}

/** Alarms that want something and call. */
export function alarmSection(alarms: readonly OccurrenceTold[]): ShownLine[] {
  return alarms
    .filter(({ state }) => !state.startsWith('suppressed'))
    .map(({ definition, system, raisedAt, returnedAt, acknowledged }) =>
      line(definition.name, {
        where: system.name,
        more: `${returnedAt ? 'returned to normal' : 'active'}, ${acknowledged ? 'acknowledged' : 'not acknowledged'}`,
        since: iso(raisedAt),
        who: acknowledged ? [acknowledged.by] : [],
        isAbnormal: !acknowledged || !returnedAt,
      }),
    );
}

/** Alarms that call nobody, with their end. */
export function suppressedSection(suppressed: readonly SuppressedTold[]): ShownLine[] {
  return suppressed.map(({ name, system, kind, begunAt, until, by, owner, reason, active }) =>
    line(name, {
      where: system.name,
      more: [spoken(kind), reason, active === null ? null : 'active now'].filter(Boolean).join(', '),
      since: iso(begunAt),
      until: iso(until),
      who: [owner ?? by ?? []].flat(),
      isAbnormal: active !== null,
    }),
  );
}

/**
 * States in force, with their end, and whether a lead was to look again.
 *
 * @param leave   when a lead last let one go on, by its run
 */
export function stateSection(
  states: readonly StateRun[],
  leave: ReadonlyMap<string, { at: Date }>,
  at: Date,
): ShownLine[] {
  return states.map(({ run, state, system, begunAt, begunBy, until, note, outstayed }) => {
    const leaveMs = authorisedUntil(state, (leave.get(run)?.at ?? begunAt).getTime());
    const isLeaveOver = leaveMs !== null && leaveMs <= at.getTime();
    return line(spoken(state), {
      where: system.name,
      more: [isLeaveOver ? 'a lead was to look again' : null, note].filter(Boolean).join(', ') || null,
      since: iso(begunAt),
      until: iso(until),
      who: [begunBy],
      isAbnormal: outstayed || isLeaveOver,
    });
  });
}

/** What a second person has to look at. */
export function secondSection(
  rows: readonly SignatureRow[],
  nameOf: (id: string | null) => string | null,
): ShownLine[] {
  return rows
    .filter(({ given, taken }) => taken === null && given?.isRight !== true)
    .map(({ kind, systemId, at, by, note }) =>
      line(signingWords(kind).title, {
        where: nameOf(systemId),
        more: note,
        since: iso(at),
        who: [by],
        isAbnormal: true,
      }),
    );
}

/** Animals under watch; one past its time stands until somebody says how it went. */
export function animalSection(
  rows: readonly AnimalWatchRow[],
  nameOf: (id: string | null) => string | null,
  at: Date,
): ShownLine[] {
  return rows.map(({ what, systemId, why, at: since, until, by }) =>
    line(what, {
      where: nameOf(systemId),
      more: why,
      since: iso(since),
      until: iso(until),
      who: [by],
      isAbnormal: until <= at,
    }),
  );
}

/** Others at work. @param nameOf   name of a system by its key */
export function noticeSection(rows: readonly NoticeRow[], nameOf: (key: string) => string): ShownLine[] {
  return rows.map(({ kind, what, systems, todo, from, until, by }) =>
    line(`${noticeWords(kind).name}: ${what}`, {
      where: systems.length === 0 ? null : systems.map(nameOf).join(', '),
      more: todo,
      since: iso(from),
      until: iso(until),
      who: [by],
    }),
  );
}

/** Safeguards that are off, and those that were not tested in their time. @param today   ISO date at the site */
export function safeguardSections(facility: Facility, today: string): Pick<Shown, 'off' | 'untested'> {
  const all = [
    ...facility.safeguards.map((safeguard) => ({ safeguard, where: null })),
    ...facility.systems.flatMap(({ name, safeguards }) => safeguards.map((safeguard) => ({ safeguard, where: name }))),
  ];
  return {
    off: all
      .filter(({ safeguard }) => isOff(safeguard, today))
      .map(({ safeguard: { name, off }, where }) =>
        line(name, { where, more: off ? `${off.why}, until ${off.until}` : null, isAbnormal: true }),
      ),
    untested: all
      .filter(({ safeguard }) => dueStanding(safeguard, today).state === 'untested')
      .map(({ safeguard: { name }, where }) => line(name, { where })),
  };
}
