import 'server-only';
import type { z } from 'zod';
import { TEST_RUNS_MS } from '#core/alarms/test-calls';
import { ok, type Result } from '#core/result';
import { listReached, unansweredTests } from '#data/calls/test-calls';
import { waysOf } from '#data/calls/ways';
import { callsPlace } from '#shape/calls/requests';
import { now } from '../clock';
import type { Refusal } from '../gate/refusal';
import { siteFor } from '../gate/site-for';
import type { Who } from '../gate/who';

/** Somebody who answered none of their last test calls: how many, and when the newest of them was made, UTC, ISO. */
export interface MissedTests {
  name: string;
  tests: number;
  madeAt: string;
}

export const missedTestsShape = callsPlace;

/** ms of the past in which an acknowledged alarm is looked for. */
const LOOKED_MS = 366 * 86_400_000;

/**
 * Who of a site missed their last test calls, and has neither answered one nor acknowledged an alarm since. Whoever is being called
 * once more is among them until they answer.
 */
export async function missedTests(
  who: Who,
  { site: key }: z.output<typeof missedTestsShape>,
): Promise<Result<MissedTests[], Refusal>> {
  const site = await siteFor(who, 'see', key);
  if (!site.ok) return site;
  const { id } = site.value;
  const at = now().getTime();
  const [missed, reached, members] = await Promise.all([
    unansweredTests(id, new Date(at - TEST_RUNS_MS)),
    listReached(id, new Date(at - LOOKED_MS)),
    waysOf(id),
  ]);
  return ok(
    members.flatMap(({ account, name }) => {
      const own = missed.find((one) => one.account === account);
      if (!own || (reached.get(account)?.alarmMs ?? 0) >= own.madeAt.getTime()) return [];
      return [{ name: name ?? 'somebody', tests: own.tests, madeAt: own.madeAt.toISOString() }];
    }),
  );
}
