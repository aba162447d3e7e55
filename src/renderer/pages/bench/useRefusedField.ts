import { useEffect, useId } from 'react';
import { useWork } from './useWork.ts';

/** Says on the Bench that a field holds something it cannot take, as long as it does: until then not everything is saved. */
export function useRefusedField(isRefused: boolean): void {
  const { refused } = useWork();
  const id = useId();
  useEffect(() => {
    if (!isRefused) return;
    refused.setState((ids) => new Set([...ids, id]), true);
    return () => refused.setState((ids) => new Set([...ids].filter((other) => other !== id)), true);
  }, [refused, id, isRefused]);
}
