import type { Migration } from './migration.ts';

/** The photos that a signature names are as final as the signature: no row of them is pointed elsewhere. */
export const signedEvidence: Migration = {
  name: 'signed-evidence',
  up(database) {
    database.exec(`
      CREATE TRIGGER determination_evidence_is_signed_once
      BEFORE UPDATE ON determination_evidence
      BEGIN
        SELECT raise(ABORT, 'the evidence of a signed determination is never changed');
      END;
      CREATE TRIGGER live_sign_photo_is_signed_once
      BEFORE UPDATE ON live_sign_photo
      BEGIN
        SELECT raise(ABORT, 'the photos of a signed sign are never changed');
      END;
    `);
  },
};
