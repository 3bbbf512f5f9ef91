/** How it stands with the daily backups. */
export interface BackupsView {
  state: 'off' | 'none' | 'late' | 'good';
  last: { at: string; machine: string; path: string; bytes: number; ageS: number } | null;
  problem: { at: string; machine: string; words: string } | null;
  nextAt: string | null;
}

/** A disk as a worker saw it last. */
export interface DiskView {
  machine: string;
  folder: string;
  holds: 'data' | 'backups';
  /** Bytes. */
  free: number;
  total: number;
  warnUnder: number;
  state: 'plenty' | 'low' | 'none';
  seenAt: string;
}

/** What Holdfast runs on. */
export interface MachineView {
  backups: BackupsView;
  disks: DiskView[];
  /** Bytes of free room under which changes are refused. */
  stopUnder: number;
  worker: { worker: 'up' | 'late' | 'never seen' | 'unknown'; workerLastSeen: string | null };
  watch: {
    alarms: 'judged' | 'not judged' | 'no site' | 'unknown';
    alarmsJudgedAt: string | null;
    callsWaiting: number | null;
    mail: 'up' | 'down' | 'not set up' | 'unknown';
    outside: 'up' | 'down' | 'not set up' | 'unknown';
  };
  readings: {
    nextPart: 'ready' | 'no part for next month' | 'unknown';
    rollUp: { waiting: number; oldest: string | null };
    keptFrom: string | null;
  };
  database: { version: string; bytes: number; place: 'here' | 'elsewhere' };
  anchor: { at: string; place: string; isLate: boolean } | null;
}

const GB = 1e9;
const MB = 1e6;

/** Bytes as people say them: `12.3 GB`, `45 MB`, `612 kB`. */
export function bytesSaid(bytes: number): string {
  if (bytes >= GB) return `${(bytes / GB).toFixed(1)}\u00a0GB`;
  return bytes >= MB ? `${Math.floor(bytes / MB)}\u00a0MB` : `${Math.ceil(bytes / 1000)}\u00a0kB`;
}
