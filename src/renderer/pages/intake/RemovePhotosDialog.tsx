import { type ReactElement, useState } from 'react';
import type { Photo } from '../../../domain/photo/photo.ts';
import { counted } from '../../../words/counts.ts';
import { useChange } from '../../client/queries.ts';
import { Button } from '../../parts/Button.tsx';
import { Dialog } from '../../parts/Dialog.tsx';
import { FailureNotice } from '../../parts/Notice.tsx';
import { useToast } from '../../parts/Toast.tsx';

/** Asks before several waiting photos are removed; each is put back by itself, from the settings. */
export function RemovePhotosDialog({ photos, onClose }: { photos: readonly Photo[]; onClose: () => void }): ReactElement {
  const [error, setError] = useState<unknown>(null);
  const [busy, setBusy] = useState(false);
  const [gone, setGone] = useState<ReadonlySet<string>>(new Set());
  const remove = useChange('DELETE /api/photos/{photoId}');
  const toast = useToast();
  const left = photos.filter((photo) => !gone.has(photo.id));

  const removeAll = async () => {
    setBusy(true);
    setError(null);
    try {
      for (const { id } of left) {
        await remove.mutateAsync({ path: { photoId: id } });
        setGone((before) => new Set(before).add(id));
      }
      toast({ message: `Removed ${counted(photos.length, 'photo')}. The settings put them back.` });
      onClose();
    } catch (caught) {
      setError(caught);
    } finally {
      setBusy(false);
    }
  };

  return (
    <Dialog
      title={`Remove ${counted(left.length, 'photo')}?`}
      onClose={onClose}
      foot={
        <>
          <Button onClick={onClose}>Keep them</Button>
          <Button kind="danger" icon="remove" busy={busy} onClick={() => void removeAll()}>
            Remove
          </Button>
        </>
      }
    >
      {error !== null && <FailureNotice error={error} />}
      <p>With each go its scale and its readings. You can put them back from the settings until Exuviary ends.</p>
    </Dialog>
  );
}
