import 'server-only';
import { personOf } from '#data/rota/feeds';
import { may } from '../../gate/may';
import { LOCAL_PERSON, type Who } from '../../gate/who';

/** Key of the person of the rota that somebody is; null when they are nobody there. */
export async function ownPerson(who: Who, siteId: string): Promise<string | null> {
  return who.id === LOCAL_PERSON.id ? null : await personOf(siteId, who.id);
}

/** Whether somebody may ask for a change of a person's duties: it is they themselves, or they may approve such changes. */
export async function mayAskFor(
  who: Who,
  { siteId, site }: { siteId: string; site: string },
  person: string,
): Promise<boolean> {
  return may(who, 'approve-duty', site) || (await ownPerson(who, siteId)) === person;
}
