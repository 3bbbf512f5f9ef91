import type { DraftGroup } from '#core/forms/field';
import { LOCAL_PERSON } from '#server/gate/who';
import { getNewThing } from '#server/describe/get-new-thing';
import { getThing } from '#server/describe/get-thing';
import { keepChange } from '#server/describe/keep-change';
import { previewChange } from '#server/describe/preview-change';
import type { Act, EditRequest, ThingNoun } from '#shape/describe/edit';

/** A thing of the base site, `harbour`. */
export interface Meant {
  noun: ThingNoun;
  system?: string;
  key?: string;
}

/** What a browser would send after its person opened the form of a thing and typed this over what it shows. */
export async function edit(
  { noun, system, key }: Meant,
  act: Act,
  typed: DraftGroup,
  units: 'metric' | 'us' = 'metric',
): Promise<EditRequest> {
  const place = { site: 'harbour', noun, system, key: key ?? '', units };
  const page =
    act === 'add'
      ? await getNewThing(LOCAL_PERSON, { ...place, noun: noun as Exclude<ThingNoun, 'site' | 'system'> })
      : await getThing(LOCAL_PERSON, { ...place, act });
  if (!page.ok) throw new Error(JSON.stringify(page.reason));
  const { draft: shown } = page.value;
  return { site: 'harbour', act, noun, system, key, draft: { ...shown, ...typed }, shown, units };
}

/** Looks at the difference and keeps the change, as a person would. */
export async function keepEdit(request: EditRequest, who = LOCAL_PERSON) {
  const seen = await previewChange(who, request);
  return seen.ok ? await keepChange(who, { ...request, basedOn: seen.value.basedOn }) : seen;
}
