import { type ReactElement, useEffect, useState } from 'react';
import { rungName } from '../../../../words/ladder.ts';
import { Button } from '../../../parts/Button.tsx';
import { DayText } from '../../../parts/DayText.tsx';
import { EstimateText } from '../../../parts/EstimateText.tsx';
import type { PlateEntry } from './entries.ts';
import style from './Gallery.module.css';
import { Stage } from './Stage.tsx';

const FRAME_MS = 1_200;

/** One skin at a time at a scale that stays, by hand or by itself, the newest first seen. @param plates oldest first, at least one. */
export function FlipBook({ plates }: { plates: readonly PlateEntry[] }): ReactElement | null {
  const [index, setIndex] = useState(plates.length - 1);
  const [running, setRunning] = useState(false);
  useEffect(() => {
    if (!running) return;
    const timer = setInterval(() => setIndex((at) => (at + 1) % plates.length), FRAME_MS);
    return () => clearInterval(timer);
  }, [running, plates.length]);
  const entry = plates[index % plates.length];
  if (!entry) return null;
  const turn = (by: number) => {
    setRunning(false);
    setIndex((at) => (at + by + plates.length) % plates.length);
  };
  const { rung } = entry;
  return (
    <>
      <div className={style['turning']}>
        <Button onClick={() => turn(-1)}>Earlier</Button>
        <Button kind={running ? 'plain' : 'primary'} onClick={() => setRunning(!running)}>
          {running ? 'Hold' : 'Let it run'}
        </Button>
        <Button onClick={() => turn(1)}>Later</Button>
        <p role={running ? undefined : 'status'}>
          <strong>{rungName(rung)}</strong>, shed <DayText day={rung.happenedFrom} to={rung.happenedTo} />
          {rung.carapaceLengthMm && (
            <>
              , <EstimateText estimate={rung.carapaceLengthMm} />
            </>
          )}{' '}
          ({(index % plates.length) + 1} of {plates.length})
        </p>
      </div>
      {/* All stay mounted, so that turning never waits for a picture. */}
      <Stage
        plates={plates}
        shown={plates.map((candidate) => ({ entry: candidate, opacity: candidate === entry ? 1 : 0 }))}
        label="The skins one by one"
      />
    </>
  );
}
