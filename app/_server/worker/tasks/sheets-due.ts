import 'server-only';
import type { Task } from 'graphile-worker';
import { z } from 'zod';
import { listSites } from '#data/sites';
import { now } from '../../clock';
import { planDues } from '../../rounds/sheets/plan-dues';

const Payload = z.object({ site: z.uuid().optional() });

/** Works out sixty days ahead when round sheets are due: of one site whose sheets have changed, or each hour of all. */
export const sheetsDueTask: Task = async (payload) => {
  const { site } = Payload.parse(payload ?? {});
  const sites = site === undefined ? (await listSites()).map(({ id }) => id) : [site];
  for (const id of sites) await planDues(id, now());
};
