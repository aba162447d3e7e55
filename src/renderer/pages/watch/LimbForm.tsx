import type { ReactElement } from 'react';
import { Button } from '../../parts/Button.tsx';
import { Dialog } from '../../parts/Dialog.tsx';
import style from './LimbForm.module.css';

const LIMBS = ['palp', 'leg I', 'leg II', 'leg III', 'leg IV'] as const;
const SIDES = ['left', 'right'] as const;

interface Props {
  busy: boolean;
  /** The limb in words, or '' where nobody saw which. */
  onChosen: (limb: string) => void;
  onClose: () => void;
}

/** Which limb was lost: one more tap. Sides are those of the animal. */
export function LimbForm({ busy, onChosen, onClose }: Props): ReactElement {
  return (
    <Dialog
      title="Which limb?"
      onClose={onClose}
      foot={
        <>
          <Button onClick={onClose}>Cancel</Button>
          <Button busy={busy} onClick={() => onChosen('')}>
            Not seen which
          </Button>
        </>
      }
    >
      <p>Left and right of the animal itself, seen from above with its head away from you.</p>
      <div className={style['limbs']}>
        {LIMBS.flatMap((limb) =>
          SIDES.map((side) => (
            <Button key={`${side} ${limb}`} busy={busy} onClick={() => onChosen(`${side} ${limb}`)}>
              {side} {limb}
            </Button>
          )),
        )}
      </div>
    </Dialog>
  );
}
