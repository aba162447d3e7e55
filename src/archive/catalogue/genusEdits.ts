import { fail, succeed } from '../../domain/result.ts';
import { ProfileEdit } from '../../domain/sexing/genus/profile.ts';
import type { GenusEdits } from '../records/sexing.ts';
import type { RecordContext } from './context.ts';
import { decoder, parseDocument } from './decoding.ts';

export function genusEditsIn({ catalogue, ambient, damage }: RecordContext): GenusEdits {
  const edits = decoder(
    'genus-edit',
    ProfileEdit,
    (row) => ({ ...row, profile: row['profile'] === null ? null : parseDocument(row['profile']) }),
    damage,
  );
  return {
    list: () =>
      edits.many(
        catalogue.all("SELECT genus || ' ' || version AS id, genus, version, profile, note, by, at FROM genus_edit ORDER BY ordinal"),
      ),
    add: (genus, expectedVersion, draft) =>
      catalogue.atomically(() => {
        const version = Number(
          catalogue.one('SELECT coalesce(max(version), 0) AS last FROM genus_edit WHERE genus = :genus', { genus })?.['last'],
        );
        if (version !== expectedVersion) return fail({ code: 'changed-meanwhile', what: 'genus', id: genus, version });
        const added: ProfileEdit = { ...draft, genus, version: version + 1, at: ambient.now() };
        catalogue.run(
          'INSERT INTO genus_edit (genus, version, profile, note, by, at) VALUES (:genus, :version, :profile, :note, :by, :at)',
          {
            ...added,
            profile: draft.profile === null ? null : JSON.stringify(draft.profile),
          },
        );
        return succeed(added);
      }),
  };
}
