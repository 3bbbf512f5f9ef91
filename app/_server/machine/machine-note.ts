import 'server-only';
import { z } from 'zod';
import { ok, type Result } from '#core/result';
import { ROLES } from '#core/rota/rota';
import { type DiskSighting, type Holds, listDisks } from '#data/machine/disks';
import { judgingNow } from '#data/alarms/judging';
import { listPaths } from '#data/calls/paths';
import { now } from '../clock';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { isJudging } from '../health/judged';
import { isMailConfigured } from '../mail/send-mail';
import { bytesWords } from './bytes-words';
import { isAdministrator } from './is-administrator';
import { dataFolder } from './places';
import { roomOf, roomState } from './room';

export const machineNoteShape = z.undefined();

/** ms for which what a worker saw of a disk is believed. */
const FRESH_MS = 5 * 60_000;

/** What stands on every page while a disk is nearly full. */
export interface RoomWarning {
  /** low: it is to be expected. none: no change is taken any more. */
  state: 'low' | 'none';
  holds: Holds;
  /** Free room in words. */
  free: string;
}

/** What every page says of the machine. */
export interface MachineNote {
  /** The worst of what is known of the disks; null when nothing is wrong, or it is not this person's business. */
  room: RoomWarning | null;
  /** Whether the person is led to the page of the machine. */
  maySeeMachine: boolean;
  /** What of Holdfast itself does not do its work: everybody has to know. */
  watch: WatchWarning | null;
}

/** What does not do its work, and since when (UTC, ISO; null: never). */
export interface WatchWarning {
  kind: 'not-judged' | 'mail';
  since: string | null;
}

/**
 * What every page says of the machine: a warning for those who enter something somewhere. The disk this process writes to is
 * looked at anew, so that no late worker hides that it is full.
 */
export async function machineNote(who: Who): Promise<Result<MachineNote, Refusal>> {
  const roles = [who.everywhere, ...Object.values(who.at)];
  const mayEnter = roles.some((role) => role !== null && ROLES.indexOf(role) >= ROLES.indexOf('aquarist'));
  const [room, watch] = await Promise.all([mayEnter ? worstRoom() : null, watchWarning()]);
  return ok({ room, maySeeMachine: isAdministrator(who), watch });
}

/** The worker is noticed to be gone here, in another process: alarms that nobody judges call nobody. */
async function watchWarning(): Promise<WatchWarning | null> {
  const at = now();
  const [judging, paths] = await Promise.all([judgingNow(), listPaths()]);
  if (!isJudging(judging, at)) return { kind: 'not-judged', since: judging.judgedAt?.toISOString() ?? null };
  const mail = isMailConfigured() ? paths.find(({ path }) => path === 'mail') : undefined;
  return mail && !mail.isUp ? { kind: 'mail', since: mail.upAt?.toISOString() ?? null } : null;
}

async function worstRoom(): Promise<RoomWarning | null> {
  const seen = [...(await ownDisk()), ...(await listDisks()).filter(isFresh)];
  for (const state of ['none', 'low'] as const) {
    const worst = seen.find((disk) => stateOf(disk) === state);
    if (worst) return { state, holds: worst.holds, free: bytesWords(worst.free) };
  }
  return null;
}

type Seen = Pick<DiskSighting, 'holds' | 'free' | 'total'>;

async function ownDisk(): Promise<Seen[]> {
  const room = await roomOf(dataFolder());
  return room === null ? [] : [{ holds: 'data', ...room }];
}

function isFresh({ seenAt }: DiskSighting): boolean {
  return now().getTime() - seenAt.getTime() < FRESH_MS;
}

/** A full disk of backups stops no change. */
function stateOf(disk: Seen): 'plenty' | 'low' | 'none' {
  const state = roomState(disk);
  return state === 'none' && disk.holds === 'backups' ? 'low' : state;
}
