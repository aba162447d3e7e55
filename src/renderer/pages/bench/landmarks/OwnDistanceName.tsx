import { type ReactElement, useState } from 'react';
import { freeLandmarks, type Landmarks, nameOfOwnDistance, pointOf } from '../../../../domain/measuring/landmarks.ts';
import { nameOwnDistance } from '../../../bench/deeds/points.ts';
import { TypedField } from '../../../parts/TypedField.tsx';
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
    <TypedField
      label="Name of your own distance"
      hint="Such as “left lobe, height”. It stands beside its length in the examination and in the statement of sex."
      value={typed ?? nameOfOwnDistance(landmarks) ?? ''}
      onType={setTyped}
      onCommit={commit}
      onDiscard={() => setTyped(null)}
      input={{ maxLength: 80 }}
    />
  );
}
