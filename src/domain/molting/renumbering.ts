import { z } from 'zod';
import { fail, type Result, succeed } from '../result.ts';
import { type Molt, MoltDraft } from './molt.ts';

/** Instar numbers noted at molts, before and after a change; turned round it undoes itself. */
export const Renumbering = z
  .object({ changes: z.array(z.object({ moltId: z.string(), from: MoltDraft.shape.instarShed, to: MoltDraft.shape.instarShed })).min(1) })
  .meta({ id: 'Renumbering' });
export type Renumbering = z.infer<typeof Renumbering>;

/** The renumbering that takes another one back. */
export function reversed({ changes }: Renumbering): Renumbering {
  return { changes: changes.map(({ moltId, from, to }) => ({ moltId, from: to, to: from })) };
}

/**
 * The molts of an animal after a renumbering. Failures: `not-found` for a molt that is not among them, `changed-meanwhile` for
 * one whose number is no longer what the renumbering starts from.
 */
export function renumbered(molts: readonly Molt[], { changes }: Renumbering): Result<Molt[]> {
  for (const { moltId, from } of changes) {
    const molt = molts.find(({ id }) => id === moltId);
    if (!molt) return fail({ code: 'not-found', what: 'molt', id: moltId });
    if (molt.instarShed !== from) return fail({ code: 'changed-meanwhile', what: 'molt', id: moltId, version: molt.version });
  }
  return succeed(
    molts.map((molt) => {
      const change = changes.find(({ moltId }) => moltId === molt.id);
      return change ? { ...molt, instarShed: change.to } : molt;
    }),
  );
}
