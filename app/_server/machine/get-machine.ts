import 'server-only';
import { z } from 'zod';
import { ok, type Result, refused } from '#core/result';
import { type DiskSighting, listDisks } from '#data/machine/disks';
import { lastAnchorSent } from '#data/machine/last-anchor';
import { databaseSize, serverVersion } from '#data/machine/server-version';
import { rollUpWaiting } from '#data/readings/due';
import { keptFrom } from '#data/readings/retire';
import { type BackupState, backupState } from '../backup/backup-state';
import type { Health } from '#shape/api/health';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { now } from '../clock';
import { reportHealth } from '../health/report';
import { databasePlace } from './database-place';
import { isAdministrator } from './is-administrator';
import { type RoomState, roomState, stopUnder, warnUnder } from './room';

export const getMachineShape = z.undefined();

/** A disk as a worker saw it last. */
export interface Disk extends Omit<DiskSighting, 'seenAt'> {
  state: RoomState;
  /** Bytes under which it is warned of. */
  warnUnder: number;
  seenAt: string;
}

/** What Holdfast runs on, for whoever looks after it. */
export interface Machine {
  backups: BackupState;
  disks: Disk[];
  /** Bytes of free room under which changes are refused. */
  stopUnder: number;
  worker: Pick<Health, 'worker' | 'workerLastSeen'>;
  /** Whether alarms are judged, calls get out, and silence would be noticed elsewhere. */
  watch: Pick<Health, 'alarms' | 'alarmsJudgedAt' | 'callsWaiting' | 'mail' | 'outside'>;
  /** Whether next month's readings have a part to go to, up to when hours and days wait to be rolled up, and of when on readings are kept. */
  readings: {
    nextPart: Health['readings'];
    rollUp: { waiting: number; oldest: string | null };
    keptFrom: string | null;
  };
  database: { version: string; bytes: number; place: 'here' | 'elsewhere' };
  /** When an anchor of a record last went elsewhere, where to, and whether that is more than two days ago. */
  anchor: { at: string; place: string; isLate: boolean } | null;
}

/** ms after which an anchor is late: one goes out each day. */
const ANCHOR_LATE_MS = 2 * 86_400_000;

/** Shows how it stands with backups, disks, worker and database. For administrators everywhere; for others there is no such page. */
export async function getMachine(who: Who): Promise<Result<Machine, Refusal>> {
  if (!isAdministrator(who)) return refused({ why: 'not-found', what: 'page' });
  const [backups, disks, health, version, bytes, place, anchor, rollUp, kept] = await Promise.all([
    backupState(),
    listDisks(),
    reportHealth(),
    serverVersion(),
    databaseSize(),
    databasePlace(),
    lastAnchorSent(),
    rollUpWaiting(now()),
    keptFrom(),
  ]);
  return ok({
    backups,
    disks: disks.map(asDisk),
    stopUnder: stopUnder(),
    worker: { worker: health.worker, workerLastSeen: health.workerLastSeen },
    watch: {
      alarms: health.alarms,
      alarmsJudgedAt: health.alarmsJudgedAt,
      callsWaiting: health.callsWaiting,
      mail: health.mail,
      outside: health.outside,
    },
    readings: { nextPart: health.readings, rollUp, keptFrom: kept?.toISOString() ?? null },
    database: { version, bytes, place },
    anchor: anchor && {
      at: anchor.sentAt.toISOString(),
      place: anchor.place,
      isLate: now().getTime() - anchor.sentAt.getTime() > ANCHOR_LATE_MS,
    },
  });
}

function asDisk({ seenAt, ...seen }: DiskSighting): Disk {
  return { ...seen, state: roomState(seen), warnUnder: warnUnder(seen.total), seenAt: seenAt.toISOString() };
}
