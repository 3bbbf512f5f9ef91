import 'server-only';
import { isDeepStrictEqual } from 'node:util';
import type { FileLayout } from '#core/readings/file/layout';
import { fileLayoutShape } from '#shape/readings/file-layout';
import type { Prisma } from '../../../prisma/generated/client';
import { database } from '../client';
import { newId } from '../new-id';
import type { Transaction } from '../transaction';

/** A layout that somebody once said. */
export interface KeptLayout {
  id: string;
  name: string;
  layout: FileLayout;
}

/** Layouts looked through for one that fits a file. */
const MOST = 500;

/** The layouts of a site, of each name the newest, by name. */
export async function layoutsAt(siteId: string): Promise<KeptLayout[]> {
  const rows = await database().fileLayout.findMany({
    where: { siteId },
    orderBy: [{ createdAt: 'desc' }, { id: 'desc' }],
    take: MOST,
  });
  const newest = new Map<string, KeptLayout>();
  for (const { id, name, layout } of rows) {
    const read = fileLayoutShape.safeParse(layout);
    if (read.success && !newest.has(name)) newest.set(name, { id, name, layout: read.data });
  }
  return [...newest.values()].sort((a, b) => a.name.localeCompare(b.name, 'en'));
}

/**
 * Remembers a layout by its name. One that is remembered stays as it is, for imports refer to it: said otherwise, it is a
 * further one that counts from then on.
 *
 * @param by   account that said it
 * @returns    its id
 */
export async function keepLayout(
  siteId: string,
  { name, layout }: Omit<KeptLayout, 'id'>,
  by: string,
  at: Date,
): Promise<string> {
  const known = (await layoutsAt(siteId)).find((one) => one.name === name);
  if (known && isDeepStrictEqual(known.layout, layout)) return known.id;
  const id = newId();
  await database().fileLayout.create({
    data: { siteId, id, name, layout: asJson(layout), createdAt: at, createdBy: by },
  });
  return id;
}

/** A file that was taken in. */
export interface KeptImport {
  id: string;
  layoutId: string;
  fileName: string;
  sha256: Uint8Array<ArrayBuffer>;
  at: Date;
  /** Account that took it in. */
  by: string;
  outcome: object;
}

/** Keeps what came of a file, in the transaction of its entry in the record. */
export async function keepImport(tx: Transaction, siteId: string, kept: KeptImport): Promise<void> {
  const { at, by, outcome, ...rest } = kept;
  await tx.fileImport.create({
    data: { siteId, ...rest, importedAt: at, importedBy: by, outcome: asJson(outcome) },
  });
}

/** The files that were taken in at a site last, the latest first. */
export async function importsAt(siteId: string, most: number): Promise<(KeptImport & { layoutName: string })[]> {
  const rows = await database().fileImport.findMany({
    where: { siteId },
    include: { layout: { select: { name: true } } },
    orderBy: [{ importedAt: 'desc' }, { id: 'desc' }],
    take: most,
  });
  return rows.map(({ id, layoutId, fileName, sha256, importedAt, importedBy, outcome, layout }) => ({
    id,
    layoutId,
    fileName,
    sha256,
    at: importedAt,
    by: importedBy,
    outcome: outcome as object,
    layoutName: layout.name,
  }));
}

/** When a file with these very bytes was taken in last; null when it never was. */
export async function importedBefore(siteId: string, sha256: Uint8Array<ArrayBuffer>): Promise<Date | null> {
  const found = await database().fileImport.findFirst({
    where: { siteId, sha256 },
    orderBy: { importedAt: 'desc' },
    select: { importedAt: true },
  });
  return found?.importedAt ?? null;
}

function asJson(value: object): Prisma.InputJsonObject {
  return { ...value } as Prisma.InputJsonObject;
}
