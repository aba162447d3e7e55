import { createStore, type StoreApi } from 'zustand/vanilla';
import { benchSourceOf, type Photo } from '../../../../domain/photo/photo.ts';
import type { Size } from '../../../bench/view.ts';
import { askBytes } from '../../../client/ask.ts';
import type { LevelNews, LevelsWanted, PictureLevel } from './levelMessages.ts';
import { startWorker } from './startWorker.ts';

/** What can be drawn of the photo by now. */
export interface PictureState {
  /** From the smaller copy made at import; shown until the photo itself is there. */
  readonly screen: PictureLevel | null;
  /** From the photo itself. */
  readonly levels: readonly PictureLevel[];
  /** All levels have come. */
  readonly complete: boolean;
  /** Why the photo itself cannot be shown; the smaller copy stays. */
  readonly trouble: unknown;
}

export type PictureStore = StoreApi<PictureState>;

export interface OpenPicture {
  readonly store: PictureStore;
  /** Stops what is under way and frees the pixels. */
  close(): void;
}

/**
 * Shows the smaller copy at once and then the photo itself, decoded and halved in a worker. Both are asked for before it is
 * known what the photo is: nearly all are JPEG, and those need not wait for each other.
 */
export function openPicture(photoId: string, known: Promise<Photo>): OpenPicture {
  const store = createStore<PictureState>(() => ({ screen: null, levels: [], complete: false, trouble: null }));
  const stop = new AbortController();
  const { signal } = stop;

  const keep = (level: PictureLevel) => {
    if (signal.aborted) return closeLevel(level);
    const { levels } = store.getState();
    store.setState({ levels: [...levels.filter(({ scale }) => scale !== level.scale), level] });
    // A level made quickly gives way to the careful one of its size.
    for (const former of levels) if (former.scale === level.scale) closeLevel(former);
  };
  const fail = (trouble: unknown) => {
    if (!signal.aborted) store.setState({ trouble });
  };

  const showScreenCopy = async () => {
    const bytes = await askBytes('GET /api/photos/{photoId}/renditions/{kind}', { photoId, kind: 'screen' }, signal);
    const [bitmap, photo] = await Promise.all([createImageBitmap(bytes), known]);
    const screen = { scale: bitmap.width / photo.widthPx, tiles: [{ x: 0, y: 0, bitmap }] };
    if (signal.aborted) closeLevel(screen);
    else store.setState({ screen });
  };
  const showOriginal = async () => {
    const made = await levelsFrom(
      (until) => askBytes('GET /api/photos/{photoId}/original', { photoId }, until),
      known.then((photo) => (benchSourceOf(photo) === 'original' ? sizeOf(photo) : null)),
      keep,
      signal,
    );
    if (made.kind !== 'done') await showUprightCopy();
  };
  /** Where the browser does not decode the photo, or turns it otherwise than the archive did. */
  const showUprightCopy = async () => {
    const made = await levelsFrom(
      (until) => askBytes('GET /api/photos/{photoId}/renditions/{kind}', { photoId, kind: 'full' }, until),
      known.then(sizeOf),
      keep,
      signal,
    );
    if (made.kind === 'not-decoded') throw new Error(`Could not decode the photo: ${made.reason}`);
    if (made.kind === 'wrong-size') throw new Error(`The copy of the photo is ${made.found.width} by ${made.found.height} pixels.`);
  };

  showScreenCopy().catch(fail);
  showOriginal()
    .then(() => {
      // With the photo itself there, nobody misses the smaller copy.
      if (signal.aborted) return;
      store.setState({ complete: true, trouble: null });
      performance.mark('bench-has-every-level');
    })
    .catch(fail);

  return {
    store,
    close() {
      stop.abort();
      const { screen, levels } = store.getState();
      for (const level of screen === null ? levels : [screen, ...levels]) closeLevel(level);
      store.setState({ screen: null, levels: [] });
    },
  };
}

/**
 * Has a worker make the levels; it starts up while the bytes are still on their way. Answers how that ended: unless it is done,
 * no level was made, or a first one that a level of the same scale replaces.
 *
 * @param picture the size it must have; null when these bytes are not to be used after all.
 */
async function levelsFrom(
  bytes: (until: AbortSignal) => Promise<Blob>,
  picture: Promise<Size | null>,
  take: (level: PictureLevel) => void,
  signal: AbortSignal,
): Promise<Exclude<LevelNews, { kind: 'level' }>> {
  signal.throwIfAborted();
  const worker = startWorker();
  const over = new AbortController();
  try {
    return await new Promise((resolve, reject) => {
      signal.addEventListener('abort', () => reject(signal.reason), { once: true });
      worker.addEventListener('error', (event) => reject(new Error(event.message)));
      worker.addEventListener('message', ({ data }: MessageEvent<LevelNews>) => {
        if (data.kind === 'level') take(data.level);
        else resolve(data);
      });
      const unused = picture.then((size) => size === null && resolve({ kind: 'not-decoded', reason: 'No browser shows this format.' }));
      Promise.all([bytes(over.signal), picture, unused]).then(([arrived, size]) => {
        if (size !== null) worker.postMessage({ bytes: arrived, picture: size } satisfies LevelsWanted);
      }, reject);
    });
  } finally {
    over.abort();
    worker.terminate();
  }
}

function sizeOf(photo: Photo): Size {
  return { width: photo.widthPx, height: photo.heightPx };
}

function closeLevel(level: PictureLevel): void {
  for (const tile of level.tiles) tile.bitmap.close();
}
