import { type ReactElement, useState } from 'react';
import { Button } from '../../parts/Button.tsx';
import { SkinDialog } from '../specimen/SkinDialog.tsx';

/** Records that the skin of a molt was found, or that it will not be. */
export function RecordSkin({ code, words, moltId }: { code: string; words: string; moltId: string }): ReactElement {
  const [open, setOpen] = useState(false);
  return (
    <>
      <Button aria-label={`${words}: ${code}`} onClick={() => setOpen(true)}>
        {words}
      </Button>
      {open && <SkinDialog moltId={moltId} exuvia={null} onClose={() => setOpen(false)} />}
    </>
  );
}
