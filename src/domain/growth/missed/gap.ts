import { z } from 'zod';
import { checkAcquisition } from '../../molting/acquisition.ts';
import { type Acquisition, anchorsOf, type InstarAnchor } from '../../molting/instarAnchors.ts';
import { type DatedMolt, inDateOrder } from '../../molting/instars.ts';
import { MoltDraft } from '../../molting/molt.ts';
import { Renumbering } from '../../molting/renumbering.ts';
import { fail, type Result, succeed } from '../../result.ts';

/** A gap to be put on record: so many instars went by unseen just before this molt's own. */
export const Gap = z.object({ beforeMoltId: z.string(), skipped: z.int().min(1).max(10) }).meta({ id: 'Gap' });
export type Gap = z.infer<typeof Gap>;

/** How a gap came to stand on record, and so how it is taken back: the renumbering turned round, or these molts removed. */
export const GapOnRecord = z
  .discriminatedUnion('kind', [
    z.object({ kind: z.literal('renumbered'), renumbering: Renumbering }),
    z.object({ kind: z.literal('presumed'), moltIds: z.array(z.string()).min(1).describe('Molts put in, oldest first') }),
  ])
  .meta({ id: 'GapOnRecord' });
export type GapOnRecord = z.infer<typeof GapOnRecord>;

/** Whether a number tells how many instars went by; without any, a gap can only be kept as molts that are presumed. */
export function isCounted(molts: readonly DatedMolt[], acquisition: Acquisition): boolean {
  return anchorsOf(inDateOrder(molts), acquisition).length > 0;
}

/**
 * Puts a gap before a molt by numbering. The molts on both sides get their numbers noted, so that the gap stands nowhere else;
 * every number noted later rises by as much, except where the numbers already left room for it: then the gap only finds its
 * place. Where only later molts are numbered these stay, and the count before the gap falls instead.
 *
 * Failures: `not-found` for a molt of another animal, `gap-misplaced` before the first molt, `gap-uncounted` when no molt has a number
 * to count from, `instar-too-low`, `instar-too-high`, `acquired-instar-contradicted`.
 *
 * @param molts all of one animal.
 */
export function insertGap(molts: readonly DatedMolt[], gap: Gap, acquisition?: Acquisition): Result<Renumbering> {
  const ordered = inDateOrder(molts);
  const place = ordered.findIndex(({ id }) => id === gap.beforeMoltId);
  const after = ordered[place];
  if (!after) return fail({ code: 'not-found', what: 'molt', id: gap.beforeMoltId });
  if (place === 0) return fail({ code: 'gap-misplaced', moltDate: after.happenedFrom });
  const anchors = anchorsOf(ordered, acquisition);
  const earlier = anchors.findLast(({ period }) => period < place);
  const later = anchors.find(({ period }) => period >= place);
  const noted = new Map<number, number>();
  if (earlier) numberUpwards(noted, { ordered, place, gap, earlier, later });
  else if (later) {
    const here = later.ended - (later.period - place);
    noted.set(place, here);
    noted.set(place - 1, here - 1 - gap.skipped);
    for (const [index, molt] of ordered.slice(0, place - 1).entries()) {
      if (molt.instarShed !== null) noted.set(index, molt.instarShed - gap.skipped);
    }
  } else return fail({ code: 'gap-uncounted', moltDate: after.happenedFrom });
  return checked(ordered, noted, acquisition);
}

/**
 * Takes the gap before a molt out again: every number noted from there on falls by as many instars as have no molt between it and the
 * numbers before. The opposite of `insertGap`, whoever put the gap there and whenever.
 *
 * Failures: `not-found` for a molt of another animal, `gap-absent` where no number before it, or none from it on, leaves room,
 * `acquired-instar-contradicted`.
 *
 * @param molts all of one animal.
 */
export function closeGap(molts: readonly DatedMolt[], beforeMoltId: string, acquisition?: Acquisition): Result<Renumbering> {
  const ordered = inDateOrder(molts);
  const place = ordered.findIndex(({ id }) => id === beforeMoltId);
  const after = ordered[place];
  if (!after) return fail({ code: 'not-found', what: 'molt', id: beforeMoltId });
  const anchors = anchorsOf(ordered, acquisition);
  const earlier = anchors.findLast(({ period }) => period < place);
  const later = anchors.find(({ period, from }) => period >= place && from === 'molt');
  const room = earlier && later ? later.ended - earlier.ended - (later.period - earlier.period) : 0;
  if (room <= 0) return fail({ code: 'gap-absent', moltDate: after.happenedFrom });
  const noted = new Map<number, number>();
  for (const [index, { instarShed }] of ordered.entries()) if (index >= place && instarShed !== null) noted.set(index, instarShed - room);
  return checked(ordered, noted, acquisition);
}

interface Counting {
  readonly ordered: readonly DatedMolt[];
  readonly place: number;
  readonly gap: Gap;
  readonly earlier: InstarAnchor;
  readonly later: InstarAnchor | undefined;
}

function numberUpwards(noted: Map<number, number>, { ordered, place, gap, earlier, later }: Counting): void {
  const isDirect = earlier.period === place - 1 && later?.period === place;
  const room = later ? later.ended - earlier.ended - (later.period - earlier.period) : 0;
  const openRoom = isDirect ? 0 : Math.min(room, gap.skipped);
  const before = earlier.ended + (place - 1 - earlier.period);
  if (earlier.period < place - 1 || earlier.from === 'molt') noted.set(place - 1, before);
  noted.set(place, before + 1 + gap.skipped + (isDirect ? room : 0));
  for (const [index, molt] of ordered.entries()) {
    if (index > place && molt.instarShed !== null) noted.set(index, molt.instarShed + gap.skipped - openRoom);
  }
}

function checked(ordered: readonly DatedMolt[], noted: ReadonlyMap<number, number>, acquisition?: Acquisition): Result<Renumbering> {
  for (const [index, instar] of noted) {
    if (instar <= index) return fail({ code: 'instar-too-low', instar, earlierMolts: index });
    if (!MoltDraft.shape.instarShed.safeParse(instar).success) return fail({ code: 'instar-too-high', instar });
  }
  const renumbered = ordered.map((molt, index) => ({ ...molt, instarShed: noted.get(index) ?? molt.instarShed }));
  const fits = acquisition ? checkAcquisition(acquisition, renumbered) : succeed(null);
  if (!fits.ok) return fits;
  return succeed({
    changes: ordered.flatMap(({ id, instarShed }, index) => {
      const to = renumbered[index]?.instarShed ?? null;
      return to === instarShed ? [] : [{ moltId: id, from: instarShed, to }];
    }),
  });
}
