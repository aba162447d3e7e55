import type { ReactElement } from 'react';
import { type Landmark, type Landmarks, nameOfOwnDistance } from '../../../../domain/measuring/landmarks.ts';
import { capitalized } from '../../../../words/labels.ts';
import { groupName, landmarkShortName } from '../../../../words/landmarks.ts';
import { choosePoint } from '../../../bench/deeds/points.ts';
import { showHandle } from '../../../bench/deeds/selection.ts';
import { allGroups, groupOf, groupsOf, type LandmarkGroup, namesIn, progressOf } from '../../../bench/steps.ts';
import style from '../panel.module.css';
import { useBench, useWork } from '../useWork.ts';
import listStyle from './LandmarkList.module.css';

/** All points by part, for the keyboard and for reading aloud: choose one to go to it, then move it with the arrow keys. */
export function LandmarkList({ landmarks }: { landmarks: Landmarks }): ReactElement {
  const { bench } = useWork();
  const asked = useBench((state) => state.guide.current);
  const selected = useBench((state) => state.selected);
  const asks = useBench((state) => state.guide.asks);
  const isBegun = (group: LandmarkGroup) => namesIn(group).some((name) => landmarks[name] !== undefined);
  const asking = groupsOf(asks);
  const groups = [...asking, ...allGroups().filter((group) => !asking.includes(group) && isBegun(group))];
  const openGroup = asked === null ? null : groupOf(asked);
  return (
    <div>
      {groups.map((group) => {
        const names = namesIn(group);
        const { done, total } = progressOf(landmarks, names);
        return (
          <details key={group} className={listStyle['group']} open={group === openGroup}>
            <summary className={listStyle['head']}>
              {groupName(group, nameOfOwnDistance(landmarks))}
              <span className={`${style['aside']} figures`}>
                {done} of {total}
              </span>
            </summary>
            <ul className={style['list']}>
              {names.map((name) => (
                <li key={name}>
                  <button
                    type="button"
                    className={style['item']}
                    aria-pressed={selected === name}
                    aria-current={asked === name ? 'step' : undefined}
                    data-takes-keys
                    onClick={() => {
                      choosePoint(bench, name);
                      showHandle(bench, name);
                    }}
                  >
                    <span>{capitalized(landmarkShortName(name))}</span>
                    <span className={`${style['aside']} figures`}>{asked === name ? 'next' : answerInWords(landmarks[name])}</span>
                  </button>
                </li>
              ))}
            </ul>
          </details>
        );
      })}
    </div>
  );
}

function answerInWords(landmark: Landmark | undefined): string {
  if (landmark === undefined) return 'open';
  if (landmark.state === 'missing') return 'missing';
  if (landmark.state === 'not-visible') return 'not visible';
  const facts = [
    ...(landmark.state === 'regenerated' ? ['regenerated'] : []),
    ...(landmark.height === undefined ? [] : [`${landmark.height.heightMm} mm high`]),
    ...(landmark.pointingPx === undefined ? [] : ['on an edge']),
  ];
  return [...facts, `${landmark.at.xPx.toFixed(1)}, ${landmark.at.yPx.toFixed(1)}`].join(', ');
}
