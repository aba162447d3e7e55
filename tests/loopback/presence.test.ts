import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { watchPresence } from '../../src/loopback/presence.ts';

describe('presence', () => {
  beforeEach(() => void vi.useFakeTimers());
  afterEach(() => void vi.useRealTimers());

  function watch() {
    const deserted = vi.fn();
    return { deserted, presence: watchPresence(60_000, deserted) };
  }

  it('tells when nobody ever came', () => {
    const { deserted } = watch();
    vi.advanceTimersByTime(59_999);
    expect(deserted).not.toHaveBeenCalled();
    vi.advanceTimersByTime(1);
    expect(deserted).toHaveBeenCalledOnce();
  });
  it('waits as long as one request is open', () => {
    const { deserted, presence } = watch();
    const [leaveFirst, leaveSecond] = [presence.enter(), presence.enter()];
    leaveFirst();
    leaveFirst();
    vi.advanceTimersByTime(3_600_000);
    expect(deserted).not.toHaveBeenCalled();
    leaveSecond();
    vi.advanceTimersByTime(60_000);
    expect(deserted).toHaveBeenCalledOnce();
  });
  it('begins to wait anew with every visit', () => {
    const { deserted, presence } = watch();
    vi.advanceTimersByTime(50_000);
    presence.enter()();
    vi.advanceTimersByTime(50_000);
    expect(deserted).not.toHaveBeenCalled();
  });
  it('says nothing once it was stopped', () => {
    const { deserted, presence } = watch();
    presence.stop();
    vi.advanceTimersByTime(120_000);
    expect(deserted).not.toHaveBeenCalled();
  });
});
