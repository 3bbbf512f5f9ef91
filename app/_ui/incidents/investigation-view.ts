import type { ActionLine } from '#core/incidents/actions';
import type { Deed, Signer } from '#core/incidents/incident';
import type { Losses } from '#core/incidents/losses';
import type { Standing } from '#core/incidents/story';
import type { Called } from '#core/incidents/words';
import type { SafeguardKind } from '#core/plans/safeguard';
import type { HeadView, StoryView } from './incident-view';

/** One safeguard as it stood when the fault began, and what was found of it. */
export interface DeedView {
  id: string;
  key: string;
  name: string;
  kind: SafeguardKind;
  isOfSite: boolean;
  state: 'tested' | 'untested' | 'off';
  last: { on: string; result: string } | null;
  why: string | null;
  found: { did: Deed; evidence: string; entry: string } | null;
}

/** The fault cases it can be held against, and the one it is. */
export interface ChoiceView {
  cases: { id: string; title: string }[];
  compared: {
    id: string;
    title: string;
    modelS: { claimed: number | null; tested: number | null };
    foundS: [number, number] | null;
  } | null;
}

/** What came of an investigation so far. */
export interface FindingsView {
  losses: Losses;
  lossEntries: Standing<'loss'>[];
  safeguards: DeedView[];
  causes: Standing<'cause'>[];
  actions: ActionLine[];
  onlyWords: boolean;
  summary: Standing<'summary'>[];
  choice: ChoiceView;
}

/** The investigation as its page shows it. */
export interface InvestigationView extends FindingsView {
  head: HeadView;
  story: StoryView[];
  called: Called;
  groups: string[];
  signers: Signer[];
  sha256: string;
  ids: Readonly<Record<string, string>>;
}
