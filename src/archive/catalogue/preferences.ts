import { FIRST_PREFERENCES, Preferences } from '../../domain/preferences.ts';
import type { PreferenceStore } from '../archive.ts';
import type { RecordContext } from './context.ts';
import { decoder, parseDocument } from './decoding.ts';

export function preferencesIn({ catalogue, damage }: RecordContext): PreferenceStore {
  const preferences = decoder('preferences', Preferences, (row) => parseDocument(row['body']), damage);
  return {
    /** Unreadable preferences are noted as damage and replaced by the first ones: they must not keep a person out. */
    get() {
      const stored = preferences.one(catalogue.one('SELECT id, body FROM preference'), '1');
      return stored.ok ? stored.value : FIRST_PREFERENCES;
    },
    set(wanted) {
      catalogue.run('INSERT INTO preference (id, body) VALUES (1, :body) ON CONFLICT (id) DO UPDATE SET body = excluded.body', {
        body: JSON.stringify(wanted),
      });
      return wanted;
    },
  };
}
