import 'server-only';
import type { z } from 'zod';
import { ok, type Result, refused } from '#core/result';
import { browserOf } from '#data/accounts/sessions';
import { addTestAnswer, findTestCall } from '#data/calls/test-calls';
import { news } from '#data/news';
import { appendRecords } from '#data/records/append-records';
import { inTransaction } from '#data/transaction';
import { testAnswerRequest } from '#shape/calls/requests';
import { now } from '../clock';
import type { Refusal } from '../gate/refusal';
import { siteFor } from '../gate/site-for';
import type { Who } from '../gate/who';
import { measurePeople } from './measure-people';

export const answerTestCallShape = testAnswerRequest;

/**
 * Says that a test call came, once: it stands in the record as a test of the way of the alarms to this person. Only whoever was
 * called can say so.
 */
export async function answerTestCall(
  who: Who,
  { site: key, test: testId, by: channel = null }: AnswerRequest,
): Promise<Result<{ site: string }, Refusal>> {
  const found = await siteFor(who, 'acknowledge', key);
  if (!found.ok) return found;
  const siteId = found.value.id;
  const test = await findTestCall(siteId, testId);
  if (test?.accountId !== who.id) return refused({ why: 'not-found', what: 'test' });
  const from = who.session === undefined ? null : await browserOf(who.session);
  const at = now();
  await inTransaction(async (tx) => {
    if (!(await addTestAnswer(tx, siteId, { testId, channel, from }, at))) return;
    const body = { by: who.id, test: testId, channel };
    await appendRecords(tx, siteId, [{ kind: 'test-call-answered', body }], at);
    await news(tx, siteId, 'alarms');
  });
  await measurePeople(siteId, at);
  return ok({ site: key });
}

type AnswerRequest = Omit<z.output<typeof answerTestCallShape>, 'by'> & {
  by?: z.output<typeof answerTestCallShape>['by'] | null;
};
