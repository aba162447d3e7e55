import { useQueryClient } from '@tanstack/react-query';
import { useEffect, useState } from 'react';
import { openingSheet } from './opening.ts';
import { type OpenPicture, openPicture } from './picture/picture.ts';

/** The pixels of a photo for as long as the component stands; null in the first moment. */
export function useOpenPicture(photoId: string): OpenPicture | null {
  const client = useQueryClient();
  const [open, setOpen] = useState<OpenPicture | null>(null);
  useEffect(() => {
    const known = client.ensureQueryData(openingSheet(photoId)).then((sheet) => sheet.photo);
    const picture = openPicture(photoId, known);
    setOpen(picture);
    return () => picture.close();
  }, [client, photoId]);
  return open;
}
