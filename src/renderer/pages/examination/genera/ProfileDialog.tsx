import { type ReactElement, useState } from 'react';
import { type GenusProfile, HooksState, ReceptacleForm } from '../../../../domain/sexing/genus/profile.ts';
import { FORM_LABELS } from '../../../../words/checklist.ts';
import { FLAG_LABELS, HOOK_WORDS } from '../../../../words/genus.ts';
import { capitalized } from '../../../../words/labels.ts';
import { useAnswer, useChange } from '../../../client/queries.ts';
import { FormDialog } from '../../../forms/FormDialog.tsx';
import { WholeRow } from '../../../forms/WholeRow.tsx';
import { CheckField } from '../../../parts/CheckField.tsx';
import { FieldGroup } from '../../../parts/FieldGroup.tsx';
import { Select } from '../../../parts/Select.tsx';
import { TextField } from '../../../parts/TextField.tsx';
import { useToast } from '../../../parts/Toast.tsx';
import { Pitfalls } from './Pitfalls.tsx';
import { draftFrom, errorsIn, FLAGS, formOf, type ProfileForm } from './profileForm.ts';

/** A keeper's version of a profile, with the reason; the shipped one is never lost. */
export function ProfileDialog({ profile, onClose }: { profile: GenusProfile; onClose: () => void }): ReactElement {
  const { data: preferences } = useAnswer('GET /api/preferences', {});
  const [basedOn] = useState(profile);
  const [form, setForm] = useState(() => formOf(profile));
  const [opened] = useState(form);
  const [tried, setTried] = useState(false);
  const change = useChange('PUT /api/genera/{genus}');
  const toast = useToast();
  const by = form.by ?? preferences?.observer ?? '';
  const errors = tried ? errorsIn({ ...form, by }) : {};
  const put = (part: Partial<ProfileForm>) => {
    setForm({ ...form, ...part });
    change.reset();
  };
  const save = () => {
    setTried(true);
    if (Object.keys(errorsIn({ ...form, by })).length > 0) return;
    change.mutate(
      {
        path: { genus: basedOn.genus },
        version: basedOn.version,
        body: { profile: form.asShipped ? null : draftFrom(form, basedOn), note: form.note, by },
      },
      {
        onSuccess: () => {
          toast({ message: `Profile of ${basedOn.genus} kept.` });
          onClose();
        },
      },
    );
  };
  return (
    <FormDialog
      title={`Profile of ${basedOn.genus}`}
      saveLabel="Keep this version"
      busy={change.isPending}
      changed={form !== opened}
      error={change.error}
      onSave={save}
      onClose={onClose}
    >
      {basedOn.version > 0 && (
        <WholeRow>
          <CheckField checked={form.asShipped} onChange={(asShipped) => put({ asShipped })}>
            Go back to the profile as shipped
          </CheckField>
        </WholeRow>
      )}
      {!form.asShipped && (
        <>
          <WholeRow>
            <FieldGroup label="Forms of the receptacles">
              {ReceptacleForm.options.map((one) => (
                <CheckField
                  key={one}
                  checked={form.forms.includes(one)}
                  onChange={(checked) => put({ forms: checked ? [...form.forms, one] : form.forms.filter((other) => other !== one) })}
                >
                  {FORM_LABELS[one]}
                </CheckField>
              ))}
            </FieldGroup>
          </WholeRow>
          <WholeRow>
            <TextField
              label="Receptacles in words"
              kind="lines"
              maxLength={1_000}
              value={form.receptacles}
              onChange={(receptacles) => put({ receptacles })}
            />
          </WholeRow>
          <Select
            label="Hooks of a male"
            value={form.hooks}
            options={HooksState.options.map((value) => ({ value, label: capitalized(HOOK_WORDS[value]) }))}
            onChange={(hooks) => put({ hooks })}
          />
          <TextField
            label="Adult carapace of a female, mm"
            hint="Leave it empty where it is not known."
            error={errors['adult']}
            value={form.adult}
            onChange={(adult) => put({ adult })}
          />
          <WholeRow>
            <TextField
              label="Hooks in words"
              kind="lines"
              maxLength={1_000}
              value={form.hooksWords}
              onChange={(hooksWords) => put({ hooksWords })}
            />
          </WholeRow>
          <WholeRow>
            <Pitfalls pitfalls={form.pitfalls} onChange={(pitfalls) => put({ pitfalls })} />
          </WholeRow>
          <WholeRow>
            <FieldGroup label="What makes it misleading">
              {FLAGS.map((flag) => (
                <CheckField
                  key={flag}
                  checked={form.flags[flag]}
                  onChange={(checked) => put({ flags: { ...form.flags, [flag]: checked } })}
                >
                  {FLAG_LABELS[flag]}
                </CheckField>
              ))}
            </FieldGroup>
          </WholeRow>
        </>
      )}
      <WholeRow>
        <TextField
          label="Why? What does it rest on?"
          hint="Stands beside this version for good. Earlier determinations keep the profile they were signed with."
          kind="lines"
          maxLength={500}
          error={errors['note']}
          value={form.note}
          onChange={(note) => put({ note })}
        />
      </WholeRow>
      <TextField label="Changed by" maxLength={200} error={errors['by']} value={by} onChange={(name) => put({ by: name })} />
    </FormDialog>
  );
}
