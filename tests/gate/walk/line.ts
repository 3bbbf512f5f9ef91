import type { Verb } from '#server/gate/may';

/** One of the two sites of the walk: alike but for key and name. */
export interface WalkSite {
  key: string;
  /** Stands in whatever is told of the site. */
  marker: string;
}

/** What an entry is given: parts of its address, what stands behind the question mark, fields of its form, what is sent to it. */
export interface Given {
  params?: Record<string, string | string[]>;
  search?: Record<string, string>;
  form?: Record<string, string | File>;
  /** JSON that is sent to a handler. */
  body?: object;
}

/** How somebody to do something with is made: a member of a site whom nothing was done with yet. */
export interface Maker {
  member: (site: WalkSite) => Promise<string>;
  /** One who has left. */
  leaver: (site: WalkSite) => Promise<string>;
}

interface Told {
  /** What it is given besides the key of the site. */
  given?: (site: WalkSite, make: Maker) => Given | Promise<Given>;
  /** What comes of it for those who may, where it is not done: it gets past the question of rights, and no further. */
  comes?: string;
}

/** What is expected of an entry. The roles follow from the verb, by the one table of who may do what. */
export type Line = Told &
  (
    | {
        /** What has to be allowed at the site. */
        verb: Verb;
        /** It is about every site: a role at one is not enough. */
        everywhere?: true;
        /** What those who may not are told, where it is not the usual: of a site, that it is not allowed. */
        refused?: 'not-found';
        /** What somebody of another site is told, where it is not that there is no such site. */
        stranger?: 'not-allowed';
      }
    /** For everybody who is signed in, of what each may see or has alone; says what. */
    | { own: string }
    /** For anybody; says why. */
    | {
        open: string;
        /** Tables in which it leaves something whoever asks: that somebody tried. */
        leaves?: string[];
        /** It is asked only by those who are nobody here. */
        only?: 'unknown';
      }
  );
