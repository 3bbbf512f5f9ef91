import 'server-only';
import type { Shown, ShownLine } from '#core/handover/shown';
import type { Facility } from '#core/facility/facility';
import { noticeWords } from '#core/notices/kinds';
import { isOff } from '#core/plans/credit';
import { standingOf } from '#core/plans/due';
import { signingWords } from '#core/states/signing';
import type { OccurrenceTold } from '#data/alarms/told';
import type { SuppressedTold } from '#data/alarms/suppressions';
import type { AnimalWatchRow } from '#data/handover/animal-watches';
import type { NoticeRow } from '#data/notices/notices';
import type { SignatureRow } from '#data/states/signatures';
import type { StateRun } from '#data/states/states';

/** A line with what most lines leave out. */
export function line(what: string, more: Partial<ShownLine> = {}): ShownLine {
  return { what, where: null, more: null, since: null, until: null, who: [], isAbnormal: false, ...more };
}

/** An instant as the page keeps it. */
export function iso(at: Date | number): string {
  return new Date(at).toISOString();
}

const spoken = (name: string) => name.replaceAll('-', ' ');

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

/** States in force, with their end. */
export function stateSection(states: readonly StateRun[]): ShownLine[] {
  return states.map(({ state, system, begunAt, begunBy, until, note, outstayed }) =>
    line(spoken(state), {
      where: system.name,
      more: note,
      since: iso(begunAt),
      until: iso(until),
      who: [begunBy],
      isAbnormal: outstayed,
    }),
  );
}

/** What a second person has to look at. */
export function secondSection(
  rows: readonly SignatureRow[],
  nameOf: (id: string | null) => string | null,
): ShownLine[] {
  return rows.map(({ kind, systemId, at, by, note }) =>
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
      .filter(({ safeguard }) => standingOf(safeguard, today).state === 'untested')
      .map(({ safeguard: { name }, where }) => line(name, { where })),
  };
}
