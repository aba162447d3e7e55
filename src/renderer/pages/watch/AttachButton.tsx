import { type ReactElement, useRef } from 'react';
import { Button } from '../../parts/Button.tsx';

/** Chooses photos of the animal to attach. */
export function AttachButton({ busy, onFiles }: { busy: boolean; onFiles: (files: readonly File[]) => void }): ReactElement {
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <Button icon="photo" busy={busy} onClick={() => input.current?.click()}>
        Attach photos
      </Button>
      <input
        ref={input}
        type="file"
        multiple
        hidden
        aria-label="Photos to attach"
        accept="image/jpeg,image/png,image/webp,image/tiff,image/heic,image/heif,.heic,.heif"
        onChange={(event) => {
          const files = [...(event.target.files ?? [])];
          event.target.value = '';
          if (files.length > 0) onFiles(files);
        }}
      />
    </>
  );
}
