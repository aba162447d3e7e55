import type { AnswerOf } from '../../../../api/contract/contract.ts';
import type { Photo } from '../../../../domain/photo/photo.ts';
import type { Checklist, UnfinishedDetermination } from '../../../../domain/sexing/determination.ts';

/** The photos that lie on the table, and the one that is shown large. */
export interface TablePhotos {
  readonly skinPhotos: readonly Photo[];
  readonly animalPhotos: readonly Photo[];
  readonly shown: Photo | undefined;
}

/** What every step of the reading is given. */
export interface StepProps {
  readonly sheet: AnswerOf<'GET /api/exuviae/{exuviaId}/examination'>;
  readonly reading: UnfinishedDetermination;
  readonly table: TablePhotos;
  readonly onAnswer: (answers: Partial<Checklist>) => void;
  readonly onChange: (changes: Partial<UnfinishedDetermination>) => void;
}
