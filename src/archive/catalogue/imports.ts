import { refuse } from '../../domain/failure.ts';
import { FileOutcome } from '../../domain/intake/task.ts';
import { fail, succeed } from '../../domain/result.ts';
import type { Imports, PlannedFile } from '../records/imports.ts';
import type { Row } from './catalogue.ts';
import type { RecordContext } from './context.ts';
import { decoder, parseDocument } from './decoding.ts';

const SELECT = `SELECT id, intake_id AS intakeId, position, name, byte_length AS byteLength, source_path AS sourcePath,
  staged_name AS stagedName, sha256, outcome FROM planned_file`;

const WAITING: FileOutcome = { kind: 'waiting' };

function textOrNull(value: unknown): string | null {
  return typeof value === 'string' ? value : null;
}

export function importsIn({ catalogue, ambient, damage }: RecordContext): Imports {
  const outcomes = decoder(
    'planned file',
    FileOutcome,
    (row) => (row['outcome'] === null ? WAITING : parseDocument(row['outcome'])),
    damage,
  );

  function plannedFile(row: Row): PlannedFile[] {
    const outcome = outcomes.one(row, String(row['id']));
    if (!outcome.ok) return [];
    const byteLength = Number(row['byteLength']);
    const stagedName = textOrNull(row['stagedName']);
    const sha256 = textOrNull(row['sha256']);
    return [
      {
        id: String(row['id']),
        intakeId: String(row['intakeId']),
        position: Number(row['position']),
        name: String(row['name']),
        byteLength,
        sourcePath: textOrNull(row['sourcePath']),
        staged: stagedName !== null && sha256 !== null ? { stagedName, sha256, byteLength } : null,
        outcome: outcome.value,
      },
    ];
  }

  function filesOf(intakeId: string): PlannedFile[] {
    return catalogue.all(`${SELECT} WHERE intake_id = :intakeId ORDER BY position`, { intakeId }).flatMap(plannedFile);
  }

  return {
    plan(files) {
      const intakeId = ambient.newId();
      const planned = catalogue.atomically(() => {
        for (const [position, { name, byteLength, sourcePath = null }] of files.entries()) {
          catalogue.run(
            `INSERT INTO planned_file (id, intake_id, position, name, byte_length, source_path)
             VALUES (:id, :intakeId, :position, :name, :byteLength, :sourcePath)`,
            { id: ambient.newId(), intakeId, position, name, byteLength, sourcePath },
          );
        }
        return succeed(filesOf(intakeId));
      });
      return planned.ok ? { intakeId, files: planned.value } : refuse(planned.failure);
    },
    files(intakeId) {
      const files = filesOf(intakeId);
      return files.length > 0 ? succeed(files) : fail({ code: 'intake-gone', intakeId });
    },
    arrived(id, { stagedName, sha256, byteLength }) {
      catalogue.run(
        `UPDATE planned_file SET staged_name = :stagedName, sha256 = :sha256, byte_length = :byteLength
         WHERE id = :id AND outcome IS NULL`,
        { id, stagedName, sha256, byteLength },
      );
    },
    settle(id, outcome) {
      catalogue.run('UPDATE planned_file SET outcome = :outcome WHERE id = :id', {
        id,
        outcome: outcome.kind === 'waiting' ? null : JSON.stringify(outcome),
      });
    },
    unfinished: () =>
      catalogue
        .all(`${SELECT} WHERE outcome IS NULL AND (staged_name IS NOT NULL OR source_path IS NOT NULL) ORDER BY ordinal`)
        .flatMap(plannedFile),
  };
}

/** Names in `incoming/` that waiting files count on, and the hash of what each holds. */
export function stagedForPlans({ catalogue }: Pick<RecordContext, 'catalogue'>): ReadonlyMap<string, string> {
  const rows = catalogue.all('SELECT staged_name AS name, sha256 FROM planned_file WHERE outcome IS NULL AND staged_name IS NOT NULL');
  return new Map(rows.map((row) => [String(row['name']), String(row['sha256'])]));
}

/**
 * At the opening nobody is sending: forgets staged bytes that are nowhere any more, then every plan whose files are all
 * settled or can't be had.
 */
export function tidyPlans({ catalogue }: Pick<RecordContext, 'catalogue'>, available: readonly string[]): void {
  catalogue.run(
    `UPDATE planned_file SET staged_name = NULL, sha256 = NULL
     WHERE outcome IS NULL AND staged_name IS NOT NULL AND staged_name NOT IN (SELECT value FROM json_each(:available))`,
    { available: JSON.stringify(available) },
  );
  catalogue.run(
    `DELETE FROM planned_file WHERE intake_id NOT IN (
       SELECT intake_id FROM planned_file WHERE outcome IS NULL AND (staged_name IS NOT NULL OR source_path IS NOT NULL))`,
  );
}
