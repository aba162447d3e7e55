import { createContext, type ReactElement, type ReactNode, useContext, useMemo, useState } from 'react';

interface Lit {
  /** The molt whose rung is pointed at or has the focus, wherever that is. */
  readonly moltId: string | null;
  light(moltId: string | null): void;
}

const LitContext = createContext<Lit>({ moltId: null, light: () => undefined });

/** Table, chart and gallery below it light the same rung. */
export function LitProvider({ children }: { children: ReactNode }): ReactElement {
  const [moltId, light] = useState<string | null>(null);
  const lit = useMemo(() => ({ moltId, light }), [moltId]);
  return <LitContext value={lit}>{children}</LitContext>;
}

/** Whether a rung is lit, and what makes its own part of the screen light it. */
export function useLit(moltId: string) {
  const { moltId: litId, light } = useContext(LitContext);
  const handlers = useMemo(
    () => ({
      onMouseEnter: () => light(moltId),
      onMouseLeave: () => light(null),
      onFocus: () => light(moltId),
      onBlur: () => light(null),
    }),
    [light, moltId],
  );
  return { isLit: litId === moltId, handlers };
}

export function useLitMolt(): string | null {
  return useContext(LitContext).moltId;
}
