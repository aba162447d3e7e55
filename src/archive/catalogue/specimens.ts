import { fail, type Result, succeed } from '../../domain/result.ts';
import { Specimen, SpecimenDraft } from '../../domain/specimen/specimen.ts';
import type { Specimens } from '../records/animals.ts';
import type { Bindings, Row } from './catalogue.ts';
import { outdated, type RecordContext } from './context.ts';
import { type DamageLog, type Decoder, decoder } from './decoding.ts';
import { keepRevision, revisionsOf } from './revisions.ts';

const COLUMNS = `id, code, taxon, name, origin, egg_sac_group AS eggSacGroup, acquired_on AS acquiredOn,
  acquired_instar AS acquiredInstar, hatched_on AS hatchedOn, habit, status, notes, sample, version, created_at AS createdAt`;

export const SELECT_SPECIMENS = `SELECT ${COLUMNS} FROM specimen`;

export function specimenDecoder(damage: DamageLog): Decoder<Specimen> {
  return decoder('specimen', Specimen, (row: Row) => ({ ...row, sample: row['sample'] === 1 }), damage);
}

/** Codes that a keeper would read as the same one are the same one. */
function codeKey(code: string): string {
  return code.normalize('NFKC').toLowerCase();
}

function bindings(draft: SpecimenDraft): Bindings {
  return { ...draft, codeKey: codeKey(draft.code) };
}

export function specimensIn({ catalogue, ambient, damage }: RecordContext): Specimens {
  const specimens = specimenDecoder(damage);

  function get(id: string): Result<Specimen> {
    return specimens.one(catalogue.one(`${SELECT_SPECIMENS} WHERE id = :id`, { id }), id);
  }

  function codeTaken(code: string, exceptId: string): boolean {
    const key = codeKey(code);
    return catalogue.one('SELECT 1 FROM specimen WHERE code_key = :key AND id <> :exceptId', { key, exceptId }) !== undefined;
  }

  function keep(id: string, version: number, at: string, draft: SpecimenDraft): void {
    keepRevision(catalogue, { kind: 'specimen', id, version, at, body: draft });
  }

  return {
    get,
    create: (draft, origin) =>
      catalogue.atomically(() => {
        const id = ambient.newId();
        const at = ambient.now();
        if (codeTaken(draft.code, id)) return fail({ code: 'code-taken', specimenCode: draft.code });
        catalogue.run(
          `INSERT INTO specimen (id, code, code_key, taxon, name, origin, egg_sac_group, acquired_on, acquired_instar, hatched_on,
             habit, status, notes, sample, version, created_at)
           VALUES (:id, :code, :codeKey, :taxon, :name, :origin, :eggSacGroup, :acquiredOn, :acquiredInstar, :hatchedOn,
             :habit, :status, :notes, :sample, 1, :at)`,
          { ...bindings(draft), id, sample: origin?.sample ? 1 : 0, at },
        );
        keep(id, 1, at, draft);
        return get(id);
      }),
    list: () => specimens.many(catalogue.all(`${SELECT_SPECIMENS} ORDER BY code_key`)),
    update: (id, expectedVersion, draft) =>
      catalogue.atomically(() => {
        if (!catalogue.one('SELECT 1 FROM specimen WHERE id = :id AND version = :expectedVersion', { id, expectedVersion })) {
          return outdated('specimen', id, get(id));
        }
        if (codeTaken(draft.code, id)) return fail({ code: 'code-taken', specimenCode: draft.code });
        catalogue.run(
          `UPDATE specimen SET code = :code, code_key = :codeKey, taxon = :taxon, name = :name, origin = :origin,
             egg_sac_group = :eggSacGroup, acquired_on = :acquiredOn, acquired_instar = :acquiredInstar, hatched_on = :hatchedOn,
             habit = :habit, status = :status, notes = :notes, version = version + 1
           WHERE id = :id`,
          { ...bindings(draft), id },
        );
        keep(id, expectedVersion + 1, ambient.now(), draft);
        return get(id);
      }),
    revisions: (id) => revisionsOf(catalogue, damage, { kind: 'specimen', id, schema: SpecimenDraft }),
    count: () => {
      const row = catalogue.one('SELECT count(*) AS "all", coalesce(sum(sample), 0) AS samples FROM specimen');
      return { all: Number(row?.['all']), samples: Number(row?.['samples']) };
    },
  };
}

/** The specimen a record refers to must exist; found before writing, so that the failure can name it. */
export function specimenExists(context: RecordContext, id: string): Result<null> {
  const found = context.catalogue.one('SELECT 1 FROM specimen WHERE id = :id', { id });
  return found ? succeed(null) : fail({ code: 'not-found', what: 'specimen', id });
}
