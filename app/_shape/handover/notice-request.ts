import { z } from 'zod';
import { NOTICE_KINDS } from '#core/notices/kinds';

const needed = (what: string, most = 500) =>
  z
    .string({ error: what })
    .trim()
    .min(1, { error: what })
    .max(most, { error: `must be ${most} letters at most` });

/** A local time as a form sends it: "2026-06-01T09:00". */
const local = z
  .string({ error: 'must be filled in' })
  .regex(/^\d{4}-\d\d-\d\dT\d\d:\d\d(:00)?$/, { error: 'must be a day and a time' })
  .transform((text) => text.slice(0, 16));

/** Notice of work by others. Times are those of the site's zone. */
export const noticeRequest = z
  .object({
    site: z.string(),
    entry: z.uuid(),
    kind: z.enum(NOTICE_KINDS, { error: 'choose the kind of work' }),
    what: needed('must say who works, and where'),
    /** A system it reaches; left out: all of them. */
    system: z.string().optional(),
    todo: needed('must say what to do', 2000),
    from: local,
    until: local,
  })
  .refine(({ from, until }) => until > from, { path: ['until'], error: 'must be after it begins' });

/** A notice is over before its time. */
export const endNoticeRequest = z.object({
  site: z.string(),
  notice: z.uuid(),
  note: z.string().trim().max(2000).optional(),
});

export type NoticeRequest = z.output<typeof noticeRequest>;
export type EndNoticeRequest = z.output<typeof endNoticeRequest>;
