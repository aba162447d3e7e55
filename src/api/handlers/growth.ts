import { closeGap, type Gap, type GapOnRecord, insertGap, isCounted } from '../../domain/growth/missed/gap.ts';
import { presumeMolts } from '../../domain/growth/missed/presumedMolts.ts';
import { checkAcquisition } from '../../domain/molting/acquisition.ts';
import { MoltDraft } from '../../domain/molting/molt.ts';
import { type Renumbering, renumbered } from '../../domain/molting/renumbering.ts';
import { checkMolt } from '../../domain/molting/sequence.ts';
import { succeed, unwrap } from '../../domain/result.ts';
import type { Specimen } from '../../domain/specimen/specimen.ts';
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

  const keepGap = (specimen: Specimen, gap: Gap): GapOnRecord => {
    const molts = archive.molts.ofSpecimen(specimen.id);
    if (isCounted(molts, specimen)) {
      return { kind: 'renumbered', renumbering: renumber(specimen.id, () => unwrap(insertGap(molts, gap, specimen))) };
    }
    const moltIds = unwrap(presumeMolts(molts, gap)).map((draft) => {
      const others = archive.molts.ofSpecimen(specimen.id);
      const fitting = unwrap(checkMolt(draft, { molts: others, replacing: null, today: todayOf(context) }));
      unwrap(checkAcquisition(specimen, [...others, fitting]));
      return unwrap(archive.molts.create(specimen.id, fitting)).id;
    });
    return { kind: 'presumed', moltIds };
  };

  return {
    'GET /api/specimens/{specimenId}/ladder': ({ path }) => withCuts(archive, ladderPageOf(archive, path.specimenId, todayOf(context))),
    'POST /api/specimens/{specimenId}/gaps': ({ path, body }) =>
      unwrap(archive.transaction(() => succeed(keepGap(unwrap(archive.specimens.get(path.specimenId)), body)))),
    'POST /api/specimens/{specimenId}/closed-gaps': ({ path: { specimenId }, body }) =>
      renumber(specimenId, () => {
        const specimen = unwrap(archive.specimens.get(specimenId));
        return unwrap(closeGap(archive.molts.ofSpecimen(specimenId), body.beforeMoltId, specimen));
      }),
    'POST /api/specimens/{specimenId}/renumberings': ({ path, body }) => renumber(path.specimenId, () => body),
  };
}
