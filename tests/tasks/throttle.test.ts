import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { createThrottle } from '../../src/tasks/throttle.ts';

describe('a throttle', () => {
  beforeEach(() => void vi.useFakeTimers());
  afterEach(() => void vi.useRealTimers());

  function throttled() {
    const call = vi.fn();
    return { call, throttle: createThrottle(200, () => Date.now(), call) };
  }

  it('calls at once the first time', () => {
    const { call, throttle } = throttled();
    throttle.request();
    expect(call).toHaveBeenCalledOnce();
  });
  it('makes one call of many that come too soon', () => {
    const { call, throttle } = throttled();
    for (let i = 0; i < 10; i++) throttle.request();
    expect(call).toHaveBeenCalledTimes(1);
    vi.advanceTimersByTime(199);
    expect(call).toHaveBeenCalledTimes(1);
    vi.advanceTimersByTime(1);
    expect(call).toHaveBeenCalledTimes(2);
    vi.advanceTimersByTime(1_000);
    expect(call).toHaveBeenCalledTimes(2);
  });
  it('forgets what was still to come', () => {
    const { call, throttle } = throttled();
    throttle.request();
    throttle.request();
    throttle.cancel();
    vi.advanceTimersByTime(1_000);
    expect(call).toHaveBeenCalledTimes(1);
  });
});
