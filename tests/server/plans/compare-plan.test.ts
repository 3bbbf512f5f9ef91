import { reviewPiece, reviewSystem } from '#core/review/review-system';
import { beforeAll, expect, test } from 'vitest';
import type { Who } from '#server/gate/who';
import { comparePiece, comparePlan } from '#server/plans/compare-plan';
import { writePlan } from '#server/plans/write-plan';
import type { Compute } from '#server/reviews/compute';
import { freshDatabase } from '../../_support/database';
import { letIn } from '../../_support/people';
import { smallFacility } from '../../_support/small-facility';
import { keep, stored } from '../../_support/stored';
import { planned } from './planned';

const { query } = freshDatabase();
const SITE = 'harbour';
const PIECE = { site: SITE, system: 'tank-1', equipment: 'heater-1' };

let wren: Who;
let avery: Who;

/** Computes in this process. */
const computeHere: Compute = async ({ facility, system, on, piece }) => {
  const found = facility.systems.find(({ key }) => key === system);
  if (!found) throw new Error('no system');
  return piece === undefined ? reviewSystem(facility, found, on) : reviewPiece(facility, found, on, piece);
};

beforeAll(async () => {
  await keep(smallFacility());
  const { siteId } = await stored(SITE);
  wren = await letIn(query, siteId, SITE, 'Wren', 'lead');
  avery = await letIn(query, siteId, SITE, 'Avery', 'aquarist');
  const warmer = JSON.stringify(planned(26.4, 26.9));
  await writePlan(wren, { ...PIECE, plan: warmer, reason: 'the band was too low', latest: 1 });
});

test('a plan is compared with what the review says now, in the review’s own words', async () => {
  const told = await comparePlan(wren, { ...PIECE, version: 2 }, computeHere);
  if (!told.ok) throw new Error(JSON.stringify(told.reason));
  const welded = told.value.cases.filter(({ id }) => id.startsWith('heater-on'));
  expect(
    welded.map(({ column, way }) => `${column}: ${way}`),
    'kept warmer, it is too warm sooner',
  ).toEqual(['claimed: graver', 'tested: graver']);
  for (const compare of [comparePlan, comparePiece])
    expect(await compare(avery, { ...PIECE, version: 2 })).toEqual({ ok: false, reason: { why: 'not-allowed' } });
});

test('a plan is compared for the faults of the piece itself first, which say what the whole review says of them', async () => {
  const asked = { ...PIECE, version: 2 };
  const [own, whole] = [await comparePiece(wren, asked, computeHere), await comparePlan(wren, asked, computeHere)];
  if (!(own.ok && whole.ok)) throw new Error('not computed');
  const ofHeater = whole.value.cases.filter(({ id }) => id.split(':')[1] === PIECE.equipment);
  expect(ofHeater.length).toBeGreaterThan(0);
  expect(own.value.cases).toEqual(ofHeater);
  expect(own.value.judged.after).toBeLessThan(whole.value.judged.after);
});
