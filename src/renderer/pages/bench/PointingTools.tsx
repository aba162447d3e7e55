import type { ReactElement } from 'react';
import { changeLoupe, setSnaps } from '../../bench/deeds/pointing.ts';
import { LOUPE_ZOOMS } from '../../bench/loupe.ts';
import { Icon } from '../../parts/Icon.tsx';
import { IconButton } from '../../parts/IconButton.tsx';
import style from './PhotoCanvas.module.css';
import { useBench, useWork } from './useWork.ts';

/** How the hand is helped: how much the loupe enlarges, and whether points go to the edge beside them. */
export function PointingTools(): ReactElement {
  const { bench } = useWork();
  const loupeZoom = useBench((state) => state.loupeZoom);
  const snaps = useBench((state) => state.snaps);
  const heldBack = useBench((state) => state.snapIsHeldBack);
  return (
    <fieldset className={style['zoom']}>
      <legend className="spoken-only">Loupe and edges</legend>
      <IconButton
        icon="loupeLess"
        label="Loupe enlarges less (Shift L)"
        disabled={loupeZoom === LOUPE_ZOOMS[0]}
        onClick={() => changeLoupe(bench, -1)}
      />
      <output className={style['percent']} aria-label="Loupe">
        Loupe {loupeZoom} ×
      </output>
      <IconButton
        icon="loupeMore"
        label="Loupe enlarges more (L)"
        disabled={loupeZoom === LOUPE_ZOOMS.at(-1)}
        onClick={() => changeLoupe(bench, 1)}
      />
      <button
        type="button"
        className={style['toEdges']}
        aria-label={`To edges: points of the carapace and of distances go to the edge beside them, joints of legs do not (E; hold F for a point that stays)${heldBack ? ': held back' : ''}`}
        title="Points go to the edge beside them (E; hold F for one that does not)"
        aria-pressed={snaps && !heldBack}
        onClick={() => setSnaps(bench, !snaps)}
      >
        <Icon name="edge" sizePx={20} />
        To edges
      </button>
    </fieldset>
  );
}
