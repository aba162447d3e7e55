import { type ReactElement, useState } from 'react';
import type { AnswerOf } from '../../../../api/contract/contract.ts';
import type { ShownNumber } from '../../../../domain/sexing/evidence/model.ts';
import type { Adjustments } from '../../../../domain/sexing/evidence/numbers.ts';
import { NUMBER_GROUPS } from '../../../../words/modelNumbers.ts';
import { useAnswer, useChange } from '../../../client/queries.ts';
import { FormDialog } from '../../../forms/FormDialog.tsx';
import { decimalFrom } from '../../../forms/reading.ts';
import { WholeRow } from '../../../forms/WholeRow.tsx';
import { Button } from '../../../parts/Button.tsx';
import { TextField } from '../../../parts/TextField.tsx';
import { useToast } from '../../../parts/Toast.tsx';

interface Props {
  /** Of the group of numbers. */
  title: string;
  page: AnswerOf<'GET /api/evidence-model'>;
  onClose: () => void;
}

/** Sets numbers of one group otherwise, with the reason; the change stays on record. */
export function ChangeNumbersDialog({ title, page, onClose }: Props): ReactElement {
  const { data: preferences } = useAnswer('GET /api/preferences', {});
  const [basedOn] = useState(page);
  const group = NUMBER_GROUPS.find((one) => one.title === title)?.numbers ?? [];
  const [typed, setTyped] = useState<Readonly<Record<string, string>>>({});
  const [note, setNote] = useState('');
  const [name, setName] = useState<string | null>(null);
  const [tried, setTried] = useState(false);
  const change = useChange('PUT /api/evidence-model');
  const toast = useToast();
  const by = name ?? preferences?.observer ?? '';
  const numbers = new Map(basedOn.numbers.map((number) => [number.id, number]));

  const typedOf = (number: ShownNumber): number => {
    const text = typed[number.id];
    return text === undefined ? number.value : decimalFrom(text);
  };
  const faultOf = (number: ShownNumber): string | undefined => {
    const value = typedOf(number);
    return value >= number.lowest && value <= number.highest ? undefined : `A number from ${number.lowest} to ${number.highest}.`;
  };
  const save = () => {
    setTried(true);
    if (note.trim() === '' || by.trim() === '' || basedOn.numbers.some((number) => faultOf(number) !== undefined)) return;
    const adjustments: Adjustments = Object.fromEntries(
      basedOn.numbers.filter((number) => typedOf(number) !== number.shipped).map((number) => [number.id, typedOf(number)]),
    );
    change.mutate(
      { version: basedOn.revision, body: { adjustments, by, note } },
      {
        onSuccess: ({ version }) => {
          toast({ message: `Kept as model ${version}.` });
          onClose();
        },
      },
    );
  };
  return (
    <FormDialog
      title={title}
      saveLabel="Keep these numbers"
      busy={change.isPending}
      changed={Object.keys(typed).length > 0 || note !== ''}
      error={change.error}
      onSave={save}
      onClose={onClose}
    >
      {group.map(([id, words]) => {
        const number = numbers.get(id);
        return (
          number && (
            <TextField
              key={id}
              label={words}
              hint={`Shipped as ${number.shipped}; from ${number.lowest} to ${number.highest}.`}
              error={faultOf(number)}
              value={typed[id] ?? String(number.value)}
              onChange={(text) => setTyped({ ...typed, [id]: text })}
            />
          )
        );
      })}
      <WholeRow>
        <Button
          kind="quiet"
          onClick={() => setTyped({ ...typed, ...Object.fromEntries(group.map(([id]) => [id, String(numbers.get(id)?.shipped ?? '')])) })}
        >
          Fill in the shipped numbers
        </Button>
      </WholeRow>
      <WholeRow>
        <TextField
          label="Why?"
          hint="Stands beside this change for good."
          kind="lines"
          maxLength={2_000}
          error={tried && note.trim() === '' ? 'Say why: determinations from now on rest on it.' : undefined}
          value={note}
          onChange={setNote}
        />
      </WholeRow>
      <TextField
        label="Changed by"
        maxLength={200}
        error={tried && by.trim() === '' ? 'Say who changes it.' : undefined}
        value={by}
        onChange={setName}
      />
    </FormDialog>
  );
}
