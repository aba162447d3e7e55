import { buffer } from 'node:stream/consumers';
import { unwrap } from '../../domain/result.ts';
import { outcomesOf } from '../../domain/sexing/outcomes/outcomes.ts';
import type { StatementFacts } from '../../domain/sexing/statement/statement.ts';
import { MOST_PHOTOS, type StatementPicture, sexStatementPdf } from '../../exchange/sexStatement/sexStatementPdf.ts';
import { openRendition } from '../../tasks/renditions.ts';
import { photoCaption, sexStatement, statementAsText } from '../../words/sexStatement.ts';
import { type ApiContext, todayOf } from '../context.ts';
import type { statementEndpoints } from '../contract/statements.ts';
import type { HandlersFor } from '../route.ts';
import { statementFactsOf } from '../views/statementFacts.ts';

export function statementHandlers(context: ApiContext): HandlersFor<keyof typeof statementEndpoints> {
  const { archive } = context;
  return {
    'GET /api/specimens/{specimenId}/sex-statement': ({ path, query }) => {
      const facts = statementFactsOf(archive, path.specimenId, { today: todayOf(context), promise: query });
      const statement = sexStatement(facts);
      return { facts, ...statement, rows: [...statement.rows], text: statementAsText(statement) };
    },
    'GET /api/specimens/{specimenId}/sex-statement.pdf': ({ path, query }) => {
      const { paper, ...promise } = query;
      const facts = statementFactsOf(archive, path.specimenId, { today: todayOf(context), promise });
      return {
        mediaType: 'application/pdf',
        contentHash: null,
        open: async () => {
          const bytes = await sexStatementPdf(sexStatement(facts), await picturesOf(context, facts), paper);
          const file = new Blob([new Uint8Array(bytes)]);
          return { stream: file.stream(), byteLength: file.size };
        },
      };
    },
    'GET /api/outcomes': () =>
      outcomesOf(
        archive.cabinet
          .entries()
          .filter(({ specimen }) => !specimen.sample)
          .map(({ specimen, determinations, liveSigns }) => ({ specimenId: specimen.id, determinations, liveSigns })),
      ),
  };
}

/** The first evidence photos as they stand in the archive; one whose original is gone fails the whole statement, told by name. */
async function picturesOf({ archive }: ApiContext, { photos }: StatementFacts): Promise<StatementPicture[]> {
  const pictures: StatementPicture[] = [];
  for (const photo of photos.slice(0, MOST_PHOTOS)) {
    const { photoId } = photo;
    const { stream } = unwrap(await openRendition(archive, unwrap(archive.photos.get(photoId)), 'screen'));
    pictures.push({ caption: photoCaption(photo), jpeg: new Uint8Array(await buffer(stream)), marks: marksOf(photo) });
  }
  return pictures;
}

function marksOf({ pins, widthPx, heightPx }: StatementFacts['photos'][number]): StatementPicture['marks'] {
  return pins.flatMap(({ mark }, place) => {
    if (mark === null) return [];
    const points = mark.kind === 'point' ? [mark.at] : mark.points;
    return [{ number: place + 1, points: points.map(({ xPx, yPx }) => ({ x: xPx / widthPx, y: yPx / heightPx })) }];
  });
}
