import { describe, expect, test } from 'vitest';
import { ALL_LANDMARKS, DORSAL_SKIN_PROTOCOL, type Landmarks } from '../../../src/domain/measuring/landmarks.ts';
import {
  advance,
  allGroups,
  askSkippedAgain,
  chooseStep,
  groupOf,
  groupsOf,
  guideFor,
  landmarkAt,
  markAbsent,
  markRegrown,
  namesIn,
  progressOf,
  setRegrown,
  skipGroup,
  skipStep,
} from '../../../src/renderer/bench/steps.ts';

const at = { xPx: 1.25, yPx: 2.5 };

describe('the guide', () => {
  test('asks for every point of the protocol once, in its order', () => {
    const asked: string[] = [];
    const landmarks: Landmarks = {};
    for (let guide = guideFor(landmarks); guide.current !== null; guide = advance(guide, landmarks)) {
      asked.push(guide.current);
      landmarks[guide.current] = landmarkAt(guide, guide.current, at);
    }
    expect(asked).toEqual([...DORSAL_SKIN_PROTOCOL]);
    expect(progressOf(landmarks)).toEqual({ done: DORSAL_SKIN_PROTOCOL.length, total: DORSAL_SKIN_PROTOCOL.length });
  });

  test('goes on with the first open point of a reading begun earlier', () => {
    expect(guideFor({ 'carapace-front': { state: 'placed', at }, 'carapace-rear': { state: 'missing' } }).current).toBe('carapace-left');
  });

  test('a skipped point stays open and is asked again only on demand', () => {
    const skipped = skipStep(guideFor({}), {});
    expect(skipped.current).toBe('carapace-rear');
    expect(advance({ ...skipped, current: 'leg-R4-tarsus-tip' }, {}).current).toBe('carapace-rear');
    expect(askSkippedAgain(skipped, {}).current).toBe('carapace-front');
  });

  test('a whole leg can be skipped', () => {
    expect(skipGroup(chooseStep(guideFor({}), 'leg-L1-femur-patella'), 'L1', {}).current).toBe('leg-L2-trochanter-femur');
  });

  test('choosing a point by hand goes on from there', () => {
    const guide = chooseStep(guideFor({}), 'leg-R2-tarsus-tip');
    expect(advance(guide, { 'leg-R2-tarsus-tip': { state: 'placed', at } }).current).toBe('leg-R3-trochanter-femur');
  });

  test('after the last point it goes back to those left open before', () => {
    const guide = chooseStep(guideFor({}), 'leg-R4-tarsus-tip');
    expect(advance(guide, { 'leg-R4-tarsus-tip': { state: 'placed', at } }).current).toBe('carapace-front');
  });

  test('every point belongs to exactly one group', () => {
    expect(allGroups().flatMap(namesIn)).toEqual([...ALL_LANDMARKS]);
    expect(groupsOf('skin').flatMap(namesIn)).toEqual([...DORSAL_SKIN_PROTOCOL]);
    for (const group of allGroups()) expect(namesIn(group).map(groupOf)).toEqual(namesIn(group).map(() => group));
  });

  test('points of a regrown leg are regenerated, before and after the mark', () => {
    const landmarks: Landmarks = { 'leg-L2-femur-patella': { state: 'placed', at }, 'leg-L2-tarsus-tip': { state: 'missing' } };
    expect(markRegrown(landmarks, 'L2', true)).toEqual({ 'leg-L2-femur-patella': { state: 'regenerated', at } });
    const guide = setRegrown(guideFor({}), 'L2', true);
    expect(landmarkAt(guide, 'leg-L2-patella-tibia', at).state).toBe('regenerated');
    expect(landmarkAt(guide, 'leg-L3-patella-tibia', at).state).toBe('placed');
    expect(landmarkAt(guide, 'carapace-left', at).state).toBe('placed');
    expect(guideFor({ 'leg-L2-femur-patella': { state: 'regenerated', at } }).regrown).toEqual(new Set(['L2']));
  });

  test('a missing leg is missing in all its points and keeps none', () => {
    const patch = markAbsent(namesIn('L2'), 'missing');
    expect(Object.values(patch)).toEqual(namesIn('L2').map(() => ({ state: 'missing' })));
  });
});
