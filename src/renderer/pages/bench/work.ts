import type { QueryClient } from '@tanstack/react-query';
import { createStore, type StoreApi } from 'zustand/vanilla';
import type { BenchSheet } from '../../../api/contract/bench.ts';
import { calibrate } from '../../../domain/measuring/calibrate.ts';
import { sameValue } from '../../bench/change.ts';
import { endPlacing } from '../../bench/deeds/selection.ts';
import { replaceDocument } from '../../bench/deeds/travel.ts';
import { type BenchDocument, documentOf, READING_KEYS, readingDraftOf } from '../../bench/document.ts';
import { settledDocument } from '../../bench/history.ts';
import { createSaver, type Saver, type SavingState } from '../../bench/saver.ts';
import { type Scale, type Stored, scaleOf, type Wanted } from '../../bench/saving.ts';
import { askedOf } from '../../bench/steps.ts';
import { type BenchState, type BenchStore, createBenchStore, type Habits } from '../../bench/store.ts';
import { type Pass, storedReading } from './pass.ts';
import { savingPorts } from './savingPorts.ts';

export interface SavingView {
  readonly state: SavingState;
  /** What was on the page when another window's change took its place; null when nothing was lost or it was put back. */
  readonly displaced: BenchDocument | null;
}

/** One pass on the Bench: the store of the photo and what keeps it saved. */
export interface Work {
  readonly sheet: BenchSheet;
  readonly pass: Pass;
  readonly bench: BenchStore;
  readonly saver: Saver;
  readonly saving: StoreApi<SavingView>;
  /** Whether the page holds anything that is neither in the archive nor given up: unsent, or displaced by another window. */
  isHeld(): boolean;
  /** Fields of the page that hold something they cannot take, by their ids. */
  readonly refused: StoreApi<ReadonlySet<string>>;
  /**
   * Begins to send what settles; answers how to stop, after which it can begin again. What is unsent when it stops is still
   * sent, and until it is stored the page warns before it closes.
   */
  start(): () => void;
}

export function openWork(sheet: BenchSheet, pass: Pass, client: QueryClient, habits: Habits = {}): Work {
  const { photo, calibration } = sheet;
  const opened = openedDocument(sheet, pass);
  const bench = createBenchStore({ width: photo.widthPx, height: photo.heightPx }, opened, {
    ...habits,
    knownHeights: pass.inheritedPointHeights,
    isPlacingEnded: pass.reading?.earlierSeen === true,
    asks: askedOf(photo.view),
  });
  const saving = createStore<SavingView>(() => ({ state: { kind: 'saved' }, displaced: null }));
  const initial: Stored = {
    scale: { ...scaleOf(calibration), version: calibration.version },
    reading: pass.reading === null ? null : storedReading(pass.reading),
  };
  let hasReading = initial.reading !== null;
  const saver = createSaver(initial, savingPorts(photo.id, pass, client), {
    state: (state) => saving.setState({ state }),
    stored(stored) {
      hasReading = stored.reading !== null;
    },
    overtaken(now) {
      const displaced = bench.getState().edited.document;
      hasReading = now.reading !== null;
      kept = now.scale;
      saving.setState({ displaced });
      replaceDocument(bench, documentFromStored(now, pass));
      if (now.reading?.draft.earlierSeen === true) endPlacing(bench);
    },
  });
  const isHeld = () => saver.hasUnsent() || saving.getState().displaced !== null;
  let isOpen = false;
  let kept: Scale = initial.scale;
  const wantedFrom = ({ edited, isPlacingEnded }: BenchState): Wanted => {
    const document = settledDocument(edited);
    // The archive takes no marks that give no scale; the points must not wait until they do.
    if (!isUnsound(document)) kept = { marks: document.scale ?? null, check: soundCheckOf(document) };
    const isTouched = hasReading || READING_KEYS.some((key) => !sameValue(document[key], opened[key]));
    const draft = readingDraftOf(document, pass);
    return { ...scaleOf(kept), draft: !isTouched ? null : isPlacingEnded ? { ...draft, earlierSeen: true } : draft };
  };
  const isUnsound = ({ scale, roughScale }: BenchDocument) =>
    scale !== undefined && (roughScale !== undefined || !calibrate(scale, photo).ok);
  const soundCheckOf = ({ scale, check }: BenchDocument) =>
    scale !== undefined && check !== undefined && calibrate(check, photo).ok ? check : undefined;
  const warn = (event: BeforeUnloadEvent) => {
    const { document, pending } = bench.getState().edited;
    const isUnsettled = isOpen && (pending !== null || isUnsound(document));
    if (isHeld() || isUnsettled) event.preventDefault();
  };

  return {
    sheet,
    pass,
    bench,
    saver,
    saving,
    isHeld,
    refused: createStore<ReadonlySet<string>>(() => new Set<string>()),
    start() {
      isOpen = true;
      addEventListener('beforeunload', warn);
      const stop = bench.subscribe((state, before) => {
        const { edited, isPlacingEnded } = state;
        const hasSettled = edited.pending === null && (before.edited.pending !== null || edited.document !== before.edited.document);
        if (hasSettled || isPlacingEnded !== before.isPlacingEnded) saver.want(wantedFrom(state));
      });
      return () => {
        stop();
        isOpen = false;
        if (!isHeld()) {
          removeEventListener('beforeunload', warn);
          return;
        }
        const end = saving.subscribe(({ state, displaced }) => {
          if (state.kind !== 'saved' || displaced !== null) return;
          end();
          if (!isOpen) removeEventListener('beforeunload', warn);
        });
      };
    },
  };
}

/** What is on the photo, and in a new pass what was found out about the skin in the one before. */
function openedDocument({ calibration }: BenchSheet, pass: Pass): BenchDocument {
  return pass.reading === null ? newPass(calibration, pass) : documentOf(calibration, pass.reading);
}

function newPass(scale: Parameters<typeof documentOf>[0], { inheritedHeight }: Pass): BenchDocument {
  const document = documentOf(scale, null);
  return inheritedHeight === null ? document : { ...document, height: inheritedHeight };
}

function documentFromStored({ scale, reading }: Stored, pass: Pass): BenchDocument {
  if (reading === null) return newPass(scale, pass);
  const { carapaceHeight, pointingPx, landmarks } = reading.draft;
  return { ...documentOf(scale, null), height: carapaceHeight, pointingPx, ...landmarks };
}
