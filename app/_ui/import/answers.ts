/** One thing that is wrong with a file, and where. */
export interface FileFault {
  path: string;
  message: string;
  line?: number;
  column?: number;
}

/** What a form gets back: a value, or a refusal with its sentence. */
export type FileAnswer<T> =
  | { ok: true; value: T }
  | { ok: false; said: string; reason: { why: string; faults?: FileFault[] } };

/** What importing a file would do. */
export interface Preview {
  site: { key: string; name: string };
  isNew: boolean;
  /** Revision of the stored site that the difference was made with. */
  basedOn: number;
  systems: number;
  groups: { system: string | null; name: string; changes: { path: string; words: string }[] }[];
}

/** What an import did. */
export interface Done {
  site: { key: string; name: string };
  isNew: boolean;
  systems: number;
  changes: number;
}

/** A server action of the import page; what it answered before makes no difference to it. */
export type FileAction<T> = (before: null, form: FormData) => Promise<FileAnswer<T>>;
