import type { ReactElement } from 'react';
import { FangColor, MoltStage, type ObservationKind, PremoltSign } from '../../../domain/care/observation.ts';
import { capitalized } from '../../../words/labels.ts';
import { SEEN_LABELS } from '../../../words/observations.ts';
import style from './ObservationKeys.module.css';

interface Group {
  readonly name: string;
  readonly kinds: readonly ObservationKind[];
}

const MEALS: Group = { name: 'Food and water', kinds: ['refused', 'ate', 'drank', 'water-changed'] };
const SIGNS: Group = { name: 'Signs of premolt', kinds: PremoltSign.options };
const MOLT: Group = { name: 'Molt', kinds: MoltStage.options };
const FANGS: Group = { name: 'Fangs', kinds: FangColor.options };
const ELSE: Group = { name: 'Else', kinds: ['limb-lost', 'sperm-web', 'egg-sac', 'mature'] };

/** Always in this order: a thumb finds a key where it was, and a second tap never meets another one. What cannot wait stands first. */
const GROUPS: readonly Group[] = [MOLT, MEALS, FANGS, SIGNS, ELSE];

interface Props {
  busy: boolean;
  onSeen: (kind: ObservationKind) => void;
}

/** One key for each thing that can be seen, large enough for a wet thumb: the second of two taps. */
export function ObservationKeys({ busy, onSeen }: Props): ReactElement {
  return (
    <>
      {GROUPS.map(({ name, kinds }) => (
        <fieldset key={name} className={style['group']}>
          <legend>{name}</legend>
          <div className={style['keys']}>
            {kinds.map((kind) => (
              <button
                key={kind}
                type="button"
                className={style['key']}
                aria-disabled={busy || undefined}
                onClick={() => busy || onSeen(kind)}
              >
                {capitalized(SEEN_LABELS[kind])}
              </button>
            ))}
          </div>
        </fieldset>
      ))}
    </>
  );
}
