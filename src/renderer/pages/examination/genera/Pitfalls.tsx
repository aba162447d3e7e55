import type { ReactElement } from 'react';
import { Button } from '../../../parts/Button.tsx';
import { FieldGroup } from '../../../parts/FieldGroup.tsx';
import { TextField } from '../../../parts/TextField.tsx';
import { MOST_PITFALLS, type ProfileForm } from './profileForm.ts';

interface Props {
  pitfalls: ProfileForm['pitfalls'];
  onChange: (pitfalls: ProfileForm['pitfalls']) => void;
}

/** What to mind of a genus, each in words; one left empty goes with this version. */
export function Pitfalls({ pitfalls, onChange }: Props): ReactElement {
  return (
    <FieldGroup label="What to mind">
      {pitfalls.map((pitfall, place) => (
        <TextField
          key={`pitfall ${String(place)}`}
          label={`Mind, ${place + 1}`}
          hint={pitfall.words.trim() === '' ? 'Empty: it goes with this version.' : undefined}
          kind="lines"
          maxLength={1_000}
          value={pitfall.words}
          onChange={(words) => onChange(pitfalls.with(place, { ...pitfall, words }))}
        />
      ))}
      {pitfalls.length < MOST_PITFALLS && (
        <Button icon="add" onClick={() => onChange([...pitfalls, { words: '', before: null }])}>
          Add what to mind
        </Button>
      )}
    </FieldGroup>
  );
}
