import type { Who } from '#server/gate/who';
import { invite } from '#server/people/invite';
import { readRecord } from '#server/record/read-record';
import { beforeAll } from 'vitest';
import { site } from '../../_support/build-facility';
import { type Copy, freshDatabase } from '../../_support/database';
import { anAccount } from '../../_support/signed-in';
import { smallFacility } from '../../_support/small-facility';
import { keep, stored } from '../../_support/stored';

export const HARBOUR = 'harbour';
export const BRANCH = 'branch';
/** Both sites are described alike. */
export const facility = smallFacility();

/** Two sites with an administrator each. */
export interface Ground {
  /** Ids of the sites. */
  harbour: string;
  branch: string;
  /** Administrator of the harbour alone, and of the branch alone. */
  chief: Who;
  other: Who;
}

/** Somebody of these roles. */
export function as(id: string, at: Who['at']): Who {
  return { id, name: 'x', everywhere: null, at };
}

/** Gives an account a role at a site, past everything that would record it. */
export async function joinSite(query: Copy['query'], siteId: string, account: string, role: string): Promise<void> {
  await query('INSERT INTO membership (site_id, account_id, role, since) VALUES ($1, $2, $3, now())', [
    siteId,
    account,
    role,
  ]);
}

/** Gives the test file that calls it two sites in a database of its own, there before the first test. */
export function twoSites() {
  const { query } = freshDatabase();
  let found: Ground | undefined;
  const ground = (): Ground => {
    if (!found) throw new Error('The sites are there from the first test on, not before.');
    return found;
  };
  beforeAll(async () => {
    await keep(facility);
    await keep({ ...facility, site: site({ key: BRANCH, name: 'Branch' }) });
    const [harbour, branch] = [(await stored(HARBOUR)).siteId, (await stored(BRANCH)).siteId];
    const chief = as(await anAccount({ name: 'Chief' }), { harbour: 'admin' });
    const other = as(await anAccount({ name: 'Other' }), { branch: 'admin' });
    await joinSite(query, harbour, chief.id, 'admin');
    await joinSite(query, branch, other.id, 'admin');
    found = { harbour, branch, chief, other };
  });
  return {
    query,
    ground,
    /** Lets somebody in, at the harbour when nothing else is said. @returns their account, and their link if one was shown */
    letIn: async (
      email: string,
      role: 'viewer' | 'aquarist' | 'lead' | 'admin' = 'lead',
      by = ground().chief,
      at = HARBOUR,
    ) => {
      const answer = await invite(by, { site: at, email, name: `Name of ${email}`, role });
      if (!answer.ok) throw new Error(JSON.stringify(answer.reason));
      const { account, link } = answer.value;
      return { account, link: link?.way === 'shown' ? link.address : null };
    },
    /** The latest entry of a record. */
    lastEntry: async (at = HARBOUR) => {
      const page = await readRecord({ ...ground().chief, everywhere: 'admin', at: {} }, { site: at });
      if (!page.ok) throw new Error('no record');
      return page.value.entries[0];
    },
  };
}
