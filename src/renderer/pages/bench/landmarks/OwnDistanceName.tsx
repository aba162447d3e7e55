import { type ReactElement, useState } from 'react';
import { freeLandmarks, type Landmarks, nameOfOwnDistance, pointOf } from '../../../../domain/measuring/landmarks.ts';
import { nameOwnDistance } from '../../../bench/deeds/points.ts';
import { Field } from '../../../parts/Field.tsx';
import { useWork } from '../useWork.ts';

/** What the keeper calls the distance of their own, once it has begun. It counts when the field is left or Enter is pressed. */
export function OwnDistanceName({ landmarks }: { landmarks: Landmarks }): ReactElement | null {
  const { bench } = useWork();
  const [typed, setTyped] = useState<string | null>(null);
  const [from] = freeLandmarks('own');
  if (pointOf(landmarks[from]) === null) return null;
  const commit = () => {
    if (typed !== null) nameOwnDistance(bench, typed);
    setTyped(null);
  };
  return (
    <Field
      label="Name of your own distance"
      hint="Such as “left lobe, height”. It stands beside its length in the examination and in the statement of sex."
    >
      {(control) => (
        <input
          {...control}
          autoComplete="off"
          maxLength={80}
          value={typed ?? nameOfOwnDistance(landmarks) ?? ''}
          onChange={(event) => setTyped(event.target.value)}
          onBlur={commit}
          onKeyDown={(event) => {
            if (event.key === 'Enter') commit();
            if (event.key === 'Escape') {
              event.stopPropagation();
              setTyped(null);
            }
          }}
        />
      )}
    </Field>
  );
}
