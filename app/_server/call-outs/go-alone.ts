import 'server-only';
import type { z } from 'zod';
import { ok, type Result } from '#core/result';
import { goAloneRequest } from '#shape/call-outs/requests';
import { acknowledgeAlarm } from '../alarms/acknowledge-alarm';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { beginCallOut } from './begin-call-out';

export const goAloneShape = goAloneRequest;

/** Acknowledges an alarm and says that one goes in alone for it, by one press: at night nobody makes two. */
export async function goAlone(
  who: Who,
  { site, occurrence, minutes }: z.output<typeof goAloneShape>,
): Promise<Result<{ site: string; callOut: string }, Refusal>> {
  const acknowledged = await acknowledgeAlarm(who, { site, occurrence, page: 'alarm' });
  if (!acknowledged.ok) return acknowledged;
  const begun = await beginCallOut(who, {
    site,
    occurrence,
    minutes,
    place: `alarm: ${acknowledged.value.name}`.slice(0, 120),
  });
  return begun.ok ? ok(begun.value) : begun;
}
