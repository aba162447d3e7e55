import { insertGap } from '../../domain/growth/missed/gap.ts';
import { checkAcquisition } from '../../domain/molting/acquisition.ts';
import { MoltDraft } from '../../domain/molting/molt.ts';
import { type Renumbering, renumbered } from '../../domain/molting/renumbering.ts';
import { checkMolt } from '../../domain/molting/sequence.ts';
import { succeed, unwrap } from '../../domain/result.ts';
import { type ApiContext, todayOf } from '../context.ts';
import type { growthEndpoints } from '../contract/growth.ts';
import type { HandlersFor } from '../route.ts';
import { ladderPageOf, withCuts } from '../views/ladderPage.ts';

export function growthHandlers(context: ApiContext): HandlersFor<keyof typeof growthEndpoints> {
  const { archive } = context;

  /** All numbers or none, and only where the row of molts makes sense with them. */
  const renumber = (specimenId: string, decide: () => Renumbering): Renumbering =>
    unwrap(
      archive.transaction(() => {
        const specimen = unwrap(archive.specimens.get(specimenId));
        const renumbering = decide();
        const molts = unwrap(renumbered(archive.molts.ofSpecimen(specimenId), renumbering));
        const changed = molts.filter(({ id }) => renumbering.changes.some(({ moltId }) => moltId === id));
        for (const molt of changed) unwrap(checkMolt(molt, { molts, replacing: molt.id, today: todayOf(context) }));
        unwrap(checkAcquisition(specimen, molts));
        for (const molt of changed) unwrap(archive.molts.update(molt.id, molt.version, MoltDraft.parse(molt)));
        return succeed(renumbering);
      }),
    );

  return {
    'GET /api/specimens/{specimenId}/ladder': ({ path }) => withCuts(archive, ladderPageOf(archive, path.specimenId, todayOf(context))),
    'POST /api/specimens/{specimenId}/gaps': ({ path, body }) =>
      renumber(path.specimenId, () =>
        unwrap(insertGap(archive.molts.ofSpecimen(path.specimenId), body, unwrap(archive.specimens.get(path.specimenId)))),
      ),
    'POST /api/specimens/{specimenId}/renumberings': ({ path, body }) => renumber(path.specimenId, () => body),
  };
}
