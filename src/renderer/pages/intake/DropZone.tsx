import { type DragEvent, type ReactElement, useId, useRef, useState } from 'react';
import { Button } from '../../parts/Button.tsx';
import { FailureNotice } from '../../parts/Notice.tsx';
import style from './DropZone.module.css';
import { droppedFiles } from './droppedFiles.ts';

interface Props {
  onFiles: (files: readonly File[]) => void;
  disabled: boolean;
  /** Leaves the room to the photos that wait below. */
  compact: boolean;
}

/** Drop files or folders here, or choose files. What a file is called does not matter: its bytes decide. */
export function DropZone({ onFiles, disabled, compact }: Props): ReactElement {
  const [over, setOver] = useState(false);
  const [error, setError] = useState<unknown>(null);
  const input = useRef<HTMLInputElement>(null);
  const hintId = useId();

  const take = (files: readonly File[]) => {
    if (files.length > 0 && !disabled) onFiles(files);
  };
  const onDrop = (event: DragEvent) => {
    event.preventDefault();
    setOver(false);
    setError(null);
    droppedFiles(event.dataTransfer).then(take, setError);
  };

  return (
    <>
      <section
        aria-label="Bring photos in"
        className={[style['zone'], compact ? style['compact'] : '', over ? style['over'] : ''].filter(Boolean).join(' ')}
        onDragOver={(event) => {
          event.preventDefault();
          setOver(true);
        }}
        onDragLeave={() => setOver(false)}
        onDrop={onDrop}
      >
        <p className={style['invitation']}>Drop photos or folders here</p>
        <Button kind="primary" icon="photo" disabled={disabled} aria-describedby={hintId} onClick={() => input.current?.click()}>
          Choose photos
        </Button>
        <p id={hintId} className={style['hint']}>
          JPEG, PNG, WebP, TIFF and HEIC. Originals are copied and never changed.
        </p>
        <input
          ref={input}
          type="file"
          multiple
          hidden
          aria-label="Photos to bring in"
          accept="image/jpeg,image/png,image/webp,image/tiff,image/heic,image/heif,.heic,.heif"
          onChange={(event) => {
            take([...(event.target.files ?? [])]);
            event.target.value = '';
          }}
        />
      </section>
      {error !== null && <FailureNotice error={error} />}
    </>
  );
}
