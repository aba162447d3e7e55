import type { ReactElement } from 'react';
import { useStore } from 'zustand';
import type { Reading } from '../../../../domain/measuring/reading.ts';
import { dayHere, dayInWords } from '../../../../words/dates.ts';
import { showGhosts } from '../../../bench/deeds/selection.ts';
import { Button } from '../../../parts/Button.tsx';
import { CheckField } from '../../../parts/CheckField.tsx';
import style from '../panel.module.css';
import { isInHand } from '../pass.ts';
import { useBench, useMeasured, useScaleTrouble, useSettledDocument, useWork } from '../useWork.ts';
import { Agreement } from './Agreement.tsx';
import { PassesCompared } from './PassesCompared.tsx';
import { passInWords } from './passInWords.ts';
import { Slips } from './Slips.tsx';
import { useEarlierHidden } from './useEarlierHidden.ts';

/** What can be done with the passes over a photo. Each waits until the pass in hand is stored. */
export interface PassVerbs {
  open(reading: Reading): void;
  begin(): void;
  remove(): void;
}

/** The passes over this photo: a second one, made without looking at the first, tells how well clicks repeat. */
export function Passes({ verbs }: { verbs: PassVerbs }): ReactElement {
  const { sheet, pass, bench, saving } = useWork();
  const isUnsound = useScaleTrouble() !== null;
  const { calibration, measurement } = useMeasured(useSettledDocument());
  const isUnsent = useStore(saving, ({ state }) => state.kind === 'waiting' || state.kind === 'refused') || isUnsound;
  const hasMarks = useBench((state) => state.edited.past.length > 0) || pass.reading !== null;
  const others = sheet.readings.filter((reading) => !isInHand(reading, pass));
  const isBlind = useEarlierHidden().length > 0;
  const showsGhosts = useBench((state) => state.ghosts.length > 0);
  return (
    <section aria-label="Passes over this photo" className={style['list']}>
      <h2 className={style['heading']}>Passes over this photo</h2>
      {sheet.readings.length === 0 && <PassLine pass={pass.pass} observer={pass.observer} on="in hand" />}
      {sheet.readings.map((reading) =>
        isInHand(reading, pass) ? (
          <PassLine key={reading.id} pass={reading.pass} observer={reading.observer} on="in hand" />
        ) : (
          <button key={reading.id} type="button" className={style['item']} disabled={isUnsent} onClick={() => verbs.open(reading)}>
            <span>{passInWords(reading.pass, reading.observer)}</span>
            <span className={style['aside']}>{dayInWords(dayHere(reading.createdAt))}</span>
          </button>
        ),
      )}
      {sheet.readings.length > 0 && pass.reading === null && <PassLine pass={pass.pass} observer={pass.observer} on="in hand" />}
      {!isBlind && others.length > 0 && <Slips others={others} isUnsent={isUnsent} open={verbs.open} />}
      {!isBlind && others.length > 0 && (
        <CheckField checked={showsGhosts} onChange={(shows) => showGhosts(bench, shows ? others.map((reading) => reading.landmarks) : [])}>
          Show the points of the other passes
        </CheckField>
      )}
      {!isBlind &&
        calibration?.ok &&
        measurement !== null &&
        others.map((other) => (
          <PassesCompared key={other.id} calibration={calibration.value} measurement={measurement} pass={pass.pass} other={other} />
        ))}
      {!isBlind && others.length > 0 && <Agreement />}
      {pass.observer === '' && <p className={style['soft']}>Your name, from Settings, is put on every pass begun after it is set.</p>}
      {isUnsent && (
        <p className={style['soft']}>
          {isUnsound
            ? 'The marks on the scale object give no scale, so they are not stored. Set them right or remove them before another pass.'
            : 'This pass is not stored yet; another can be opened when it is.'}
        </p>
      )}
      <div className={style['row']}>
        <Button icon="add" disabled={isUnsent || !hasMarks} onClick={() => verbs.begin()}>
          New pass
        </Button>
        {hasMarks && (
          <Button kind="danger" icon="remove" disabled={isUnsent} onClick={() => verbs.remove()}>
            Remove this pass
          </Button>
        )}
      </div>
    </section>
  );
}

function PassLine({ pass, observer, on }: { pass: number; observer: string; on: string }): ReactElement {
  return (
    <p className={style['item']}>
      <strong>{passInWords(pass, observer)}</strong>
      <span className={style['aside']}>{on}</span>
    </p>
  );
}
