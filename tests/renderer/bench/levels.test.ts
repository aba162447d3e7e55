import { describe, expect, test } from 'vitest';
import { isSharp, levelFor, levelSizesOf, TILE_PX, tileFramesOf } from '../../../src/renderer/bench/levels.ts';

describe('the smaller copies of a picture', () => {
  test('halve it down to about a screenful', () => {
    expect(levelSizesOf({ width: 8064, height: 6048 })).toEqual([
      { width: 8064, height: 6048, scale: 1 },
      { width: 4032, height: 3024, scale: 0.5 },
      { width: 2016, height: 1512, scale: 0.25 },
      { width: 1008, height: 756, scale: 0.125 },
    ]);
  });

  test('are not needed for a small picture, and never shrink to nothing', () => {
    expect(levelSizesOf({ width: 640, height: 480 })).toHaveLength(1);
    expect(levelSizesOf({ width: 20_000, height: 1 }).every((level) => level.height >= 1)).toBe(true);
  });

  test('are cut into tiles that cover every pixel and overlap by one', () => {
    const level = { width: 2 * TILE_PX + 100, height: TILE_PX + 1 };
    const frames = tileFramesOf(level);
    expect(frames).toHaveLength(6);
    for (const { x, y, width, height } of frames) {
      expect(x + width).toBe(Math.min(level.width, x + TILE_PX + 1));
      expect(y + height).toBe(Math.min(level.height, y + TILE_PX + 1));
    }
    expect(
      frames.reduce(
        (covered, { width, height, x, y }) =>
          covered + Math.min(width, TILE_PX, level.width - x) * Math.min(height, TILE_PX, level.height - y),
        0,
      ),
    ).toBe(level.width * level.height);
  });

  test('the coarsest one that still has a pixel for each device pixel is drawn', () => {
    const levels = [{ scale: 0.125 }, { scale: 1 }, { scale: 0.5 }, { scale: 0.25 }];
    expect(levelFor(levels, 0.13)?.scale).toBe(0.25);
    expect(levelFor(levels, 0.125)?.scale).toBe(0.125);
    expect(levelFor(levels, 8)?.scale).toBe(1);
    expect(levelFor([], 1)).toBeNull();
  });

  test('a level is sharp when no finer one would show more', () => {
    expect(isSharp({ scale: 0.25 }, 0.2)).toBe(true);
    expect(isSharp({ scale: 0.25 }, 0.3)).toBe(false);
    expect(isSharp({ scale: 1 }, 8)).toBe(true);
  });
});
