/** Somebody who went in alone, as it is shown. Instants in ISO, UTC. */
export interface CallOutView {
  id: string;
  name: string;
  place: string;
  state: 'out' | 'overdue' | 'back';
  begunAt: string;
  until: string;
  named: string | null;
  occurrence: string | null;
  called: string[];
  seenTo: string | null;
  backAt: string | null;
  backBy: string | null;
  note: string | null;
  isOwn: boolean;
  mayExtend: boolean;
  mayEnd: boolean;
}

/** Who is in alone at a site. */
export interface CallOutsView {
  site: { key: string; name: string; zone: string };
  open: CallOutView[];
  past: CallOutView[];
  people: { account: string; name: string }[];
  mayBegin: boolean;
}
