import { type ReactElement, useState } from 'react';
import { flushSync } from 'react-dom';
import type { SpecimenPage } from '../../../api/contract/specimens.ts';
import { instarOfAnimalPhoto } from '../../../domain/molting/instars.ts';
import type { Photo, PhotoView } from '../../../domain/photo/photo.ts';
import { viewsOf } from '../../../domain/photo/view.ts';
import { counted } from '../../../words/counts.ts';
import { daysInWords, spanInWords } from '../../../words/dates.ts';
import { instarSpanInWords } from '../../../words/instars.ts';
import { choicesOf, VIEW_LABELS } from '../../../words/labels.ts';
import { focusFirstFault } from '../../forms/focusFirstFault.ts';
import { textOrNull } from '../../forms/reading.ts';
import { Button } from '../../parts/Button.tsx';
import { CheckField } from '../../parts/CheckField.tsx';
import { DayField } from '../../parts/DayField.tsx';
import { FailureNotice, Notice } from '../../parts/Notice.tsx';
import { Select } from '../../parts/Select.tsx';
import { TextField } from '../../parts/TextField.tsx';
import { NewMoltDays } from './NewMoltDays.tsx';
import style from './OwnerForm.module.css';
import { dayFaults, firstChoice, moltChoices, NEW_MOLT, type OwnerChoice, ownerOf } from './ownerForm.ts';
import type { Placed } from './PlacedList.tsx';
import { suggestView } from './suggesting.ts';
import { farApart } from './taken.ts';
import type { Assigning } from './useAssign.ts';

interface Props {
  photos: readonly Photo[];
  page: SpecimenPage;
  likelyMoltId: string | null;
  today: string;
  assigning: Assigning;
  onPlaced: (placed: Placed) => void;
}

const SHOWS = [
  { value: 'skin', label: 'A shed skin' },
  { value: 'animal', label: 'The animal itself' },
] as const;

/** For one animal: skin or the animal itself, which molt, which view. Starts with what the dates suggest. */
export function OwnerForm({ photos, page, likelyMoltId, today, assigning, onPlaced }: Props): ReactElement {
  const [choice, setChoice] = useState<OwnerChoice>(() => firstChoice(photos, page, likelyMoltId));
  const [views, setViews] = useState<ReadonlyMap<string, PhotoView>>(new Map());
  const [takenOn, setTakenOn] = useState('');
  const [moltMade, setMoltMade] = useState<string | null>(null);
  const { specimen } = page.summary;
  const undated = photos.some((photo) => photo.takenOn === null);
  const owner = ownerOf(choice, page);
  const apart = farApart(photos);
  const [sameSkin, setSameSkin] = useState(false);
  // Days are looked at when they are given, not while they are typed.
  const [faults, setFaults] = useState<ReturnType<typeof dayFaults>>({});
  const fitting = viewsOf(choice.shows);
  const viewOf = (photo: Photo): PhotoView => {
    const view = views.get(photo.id) ?? suggestView(photo.originalName);
    return fitting.includes(view) ? view : 'other';
  };
  const put = (part: Partial<OwnerChoice>) => {
    setChoice((before) => ({ ...before, ...part }));
    setFaults({});
  };

  const place = () => {
    if (!owner) return;
    const found = dayFaults(choice, takenOn, today);
    setFaults(found);
    if (Object.keys(found).length > 0) return;
    assigning.assign(
      {
        photos,
        owner,
        views: new Map(photos.map((photo) => [photo.id, viewOf(photo)])),
        moltMadeBefore: moltMade,
        takenOnIfUnknown: textOrNull(takenOn),
      },
      {
        onMolt: (molt) => {
          setMoltMade(molt);
          put({ molt });
        },
        onPlaced: (placed, made) =>
          onPlaced({ photos: placed, specimenId: specimen.id, code: specimen.code, skin: owner.kind !== 'animal', made }),
      },
    );
  };

  return (
    <form
      noValidate
      className={style['form']}
      onSubmit={(event) => {
        event.preventDefault();
        if (assigning.isPending) return;
        flushSync(place);
        focusFirstFault(event.currentTarget);
      }}
    >
      <Select label="It shows" value={choice.shows} options={SHOWS} onChange={(shows) => put({ shows })} />
      {choice.shows === 'animal' ? (
        <p className={style['says']}>{animalWords(photos, page)}</p>
      ) : (
        <>
          <Select
            label="Skin of the molt"
            value={choice.molt}
            options={moltChoices(page.molts, photos[0]?.takenOn ?? null)}
            onChange={(molt) => put({ molt })}
          />
          {choice.molt === NEW_MOLT && (
            <>
              <NewMoltDays choice={choice} photoDay={photos[0]?.takenOn ?? null} today={today} faults={faults} onChange={put} />
              <TextField
                label="Instar shed"
                kind="whole"
                hint="The one that ended; empty if unknown"
                value={choice.newInstarShed}
                onChange={(newInstarShed) => put({ newInstarShed })}
              />
            </>
          )}
        </>
      )}
      {photos.map((photo) => (
        <Select
          key={photo.id}
          label={photos.length === 1 ? 'View' : `View of ${photo.originalName}`}
          value={viewOf(photo)}
          options={choicesOf(VIEW_LABELS).filter((one) => fitting.includes(one.value))}
          onChange={(view) => setViews((before) => new Map(before).set(photo.id, view))}
        />
      ))}
      {undated && (
        <DayField
          label="Taken on"
          hint="The camera wrote no date; optional"
          error={faults.takenOn}
          value={takenOn}
          latest={today}
          onChange={(day) => {
            setTakenOn(day);
            setFaults({});
          }}
        />
      )}
      {apart !== null && choice.shows === 'skin' && (
        <Notice tone="warning" title={`These photos were taken ${daysInWords(apart.days)} apart: ${spanInWords(apart.first, apart.last)}.`}>
          <CheckField checked={sameSkin} onChange={setSameSkin}>
            They show one and the same skin
          </CheckField>
        </Notice>
      )}
      {!owner && <p className={style['says']}>Say first when the molt was, and the instar as a number or not at all.</p>}
      <Button
        kind="primary"
        type="submit"
        disabled={!owner || (apart !== null && choice.shows === 'skin' && !sameSkin)}
        busy={assigning.isPending}
      >
        Give {photos.length === 1 ? 'it' : counted(photos.length, 'photo')} to {specimen.code}
      </Button>
      {assigning.error !== null && (
        <div ref={intoSight}>
          <FailureNotice error={assigning.error} />
        </div>
      )}
    </form>
  );
}

/** Below the button, so that it stays where it is; a form longer than the window must not hide why nothing happened. */
function intoSight(element: HTMLElement | null): void {
  element?.scrollIntoView({ block: 'nearest' });
}

/** After a molt the animal is in the next instar, unlike the skin it left. */
function animalWords(photos: readonly Photo[], page: SpecimenPage): string {
  const takenOn = photos[0]?.takenOn ?? null;
  const molts = page.molts.map((entry) => entry.molt);
  const span = takenOn === null ? null : instarOfAnimalPhoto(takenOn, molts, page.summary.specimen);
  if (!span) return 'Kept with the animal; which instar it was in is not known.';
  return `On that day it was in ${instarSpanInWords(span)}.`;
}
