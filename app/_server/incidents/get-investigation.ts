import 'server-only';
import { type ActionLine, actionsOf, isOnlyWords } from '#core/incidents/actions';
import { PARTS, type Signer } from '#core/incidents/incident';
import { type Losses, lossesOf } from '#core/incidents/losses';
import type { Mark } from '#core/incidents/marks';
import { newestBy, type Standing, standing } from '#core/incidents/story';
import { ok, type Result } from '#core/result';
import { digestOf } from '#data/incidents/entries';
import { incidentPlace, type IncidentPlace } from '#shape/incidents/place';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { aroundIncident } from './around';
import { type CaseChoice, compareCase } from './compare-case';
import { findIncidentAt, headOf, type IncidentAt, type IncidentHead, type StoryView } from './find-incident-at';
import { freshIds } from './get-incident';
import { type SafeguardDeed, safeguardDeeds } from './safeguard-lines';
import { signersFor } from './sign-incident';

/** What came of an investigation so far. */
export interface Findings {
  losses: Losses;
  lossEntries: Standing<'loss'>[];
  safeguards: SafeguardDeed[];
  causes: Standing<'cause'>[];
  actions: ActionLine[];
  /** Nothing among the actions does more than tell people to do it better. */
  onlyWords: boolean;
  summary: Standing<'summary'>[];
  choice: CaseChoice;
}

/** The investigation of an incident. */
export interface InvestigationPage extends Findings {
  head: IncidentHead;
  story: StoryView[];
  called: ReadonlyMap<string, string>;
  /** Species groups of the system. */
  groups: string[];
  /** As what the person may sign, none once they have, and over which entries. */
  signers: Signer[];
  sha256: string;
  /** Ids for the next entries: by form, by safeguard, by action, and by the entry that is taken back. */
  ids: Readonly<Record<string, string>>;
}

export const getInvestigationShape = incidentPlace;

const FORMS = ['loss', 'cause', 'action', 'sign', ...PARTS];

/** The investigation of an incident: losses, what each safeguard did, causes, actions, and who signs. */
export async function getInvestigation(who: Who, place: IncidentPlace): Promise<Result<InvestigationPage, Refusal>> {
  const found = await findIncidentAt(who, 'read-record', place);
  if (!found.ok) return found;
  const at = found.value;
  const [told, around] = await Promise.all([headOf(who, at), aroundIncident(at, 0)]);
  const findings = await findingsOf(at, around.marks, around.startMs);
  const { systems } = at.stored.facility;
  const own = systems.filter(({ key }) => at.incident.system === null || key === at.incident.system.key);
  const places = [...FORMS, ...findings.safeguards.map(({ id }) => id), ...at.entries.map(({ id }) => id)];
  const sha256 = digestOf(at.incident, at.entries);
  const hasSigned = standing(at.entries, 'signature').some(({ by, body }) => by === who.id && body.sha256 === sha256);
  return ok({
    ...told,
    ...findings,
    groups: [...new Set(own.flatMap(({ stock }) => stock.map(({ group }) => group)))].sort(),
    signers: hasSigned ? [] : await signersFor(undefined, at.entry, who),
    sha256,
    ids: freshIds(places),
  });
}

/** What came of an investigation so far. @param startMs when it began, as far as known */
export async function findingsOf(at: IncidentAt, marks: readonly Mark[], startMs: number): Promise<Findings> {
  const { entries, today } = at;
  const over = marks.find(({ mark }) => mark === 'put-right') ?? marks.find(({ mark }) => mark === 'normal');
  const losses = lossesOf(entries, over?.atMs ?? startMs);
  const summary = [...newestBy(standing(entries, 'summary'), ({ body }) => body?.part ?? '').values()];
  const chosen = summary.find(({ body }) => body.part === 'case')?.body.text ?? null;
  const actions = actionsOf(entries, today);
  const [safeguards, choice] = await Promise.all([
    safeguardDeeds(at, startMs),
    compareCase(at, { marks, losses, chosen }),
  ]);
  return {
    losses,
    lossEntries: standing(entries, 'loss'),
    safeguards,
    causes: standing(entries, 'cause'),
    actions,
    onlyWords: isOnlyWords(actions),
    summary,
    choice,
  };
}
