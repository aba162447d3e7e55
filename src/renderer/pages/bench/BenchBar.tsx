import { type ReactElement, useState } from 'react';
import { redoChange, undoChange } from '../../bench/deeds/travel.ts';
import { askedOf } from '../../bench/steps.ts';
import { Button } from '../../parts/Button.tsx';
import { ButtonLink } from '../../parts/ButtonLink.tsx';
import { Dialog } from '../../parts/Dialog.tsx';
import { IconButton } from '../../parts/IconButton.tsx';
import { SampleMark } from '../../parts/SampleMark.tsx';
import { Taxon } from '../../parts/Taxon.tsx';
import { useWindowTitle } from '../../parts/useWindowTitle.ts';
import style from './BenchBar.module.css';
import { CHANGE_LABELS, KEYS_IN_WORDS } from './benchWords.ts';
import { instarInWords } from './headLines.ts';
import { useRemovedPass, useUndoOfRemoval } from './removedPass.ts';
import { SavingNote } from './SavingNote.tsx';
import { useBench, useWork } from './useWork.ts';

/** Above the photo: whose skin this is, undo and redo, and whether all is stored. */
export function BenchBar(): ReactElement {
  const { sheet, bench } = useWork();
  const { photo, specimen } = sheet;
  const last = useBench((state) => state.edited.past.at(-1)?.label);
  const next = useBench((state) => state.edited.future[0]?.label);
  const inHand = useBench((state) => state.edited.pending !== null);
  const removed = useRemovedPass();
  useUndoOfRemoval();
  const [showsKeys, setShowsKeys] = useState(false);
  useWindowTitle(`${specimen?.code ?? photo.originalName} · Bench`);
  const wholeName = specimen === null ? photo.originalName : `${specimen.name ?? specimen.code} ${specimen.taxon}`;
  return (
    <header className={style['bar']}>
      <div className={style['words']}>
        <h1 className={style['title']} title={wholeName}>
          {specimen === null ? (
            photo.originalName
          ) : (
            <>
              {specimen.name ?? specimen.code} <Taxon name={specimen.taxon} />
            </>
          )}
        </h1>
        {specimen?.sample && <SampleMark />}
        <p className={style['instar']} title={instarInWords(sheet)}>
          {instarInWords(sheet)}
        </p>
      </div>
      {photo.subject.kind === 'skin' && askedOf(photo.view) === 'abdomen' && (
        <ButtonLink kind="quiet" icon="examine" to={`/examination/${photo.subject.exuviaId}`}>
          To the examination
        </ButtonLink>
      )}
      <SavingNote />
      <IconButton
        icon="undo"
        label={
          last !== undefined ? `Undo: ${CHANGE_LABELS[last]}` : removed !== null ? `Undo: remove pass ${removed.pass}` : 'Nothing to undo'
        }
        disabled={(last === undefined && removed === null) || inHand}
        onClick={() => (removed === null ? undoChange(bench) : removed.putBack())}
      />
      <IconButton
        icon="redo"
        label={next === undefined ? 'Nothing to redo' : `Redo: ${CHANGE_LABELS[next]}`}
        disabled={next === undefined || inHand}
        onClick={() => redoChange(bench)}
      />
      <Button kind="quiet" onClick={() => setShowsKeys(true)}>
        Keys
      </Button>
      {showsKeys && (
        <Dialog title="Keys on the Bench" onClose={() => setShowsKeys(false)}>
          <dl className={style['keys']}>
            {KEYS_IN_WORDS.map(({ keys, does }) => (
              <div key={keys}>
                <dt>{keys}</dt>
                <dd>{does}</dd>
              </div>
            ))}
          </dl>
        </Dialog>
      )}
    </header>
  );
}
