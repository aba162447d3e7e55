import { createContext, type ReactElement, type ReactNode, useCallback, useContext, useEffect, useMemo, useState } from 'react';
import { Button } from './Button.tsx';
import { IconButton } from './IconButton.tsx';
import style from './Toast.module.css';

export interface ToastContent {
  message: string;
  /** Offered as a button while the message stands. What it does must be found elsewhere too: the message goes by itself. */
  action?: { label: string; run: () => void };
}

const MESSAGE_SHOWN_MS = 6_000;
/** Time to read, to think and to reach the button. */
const OFFER_SHOWN_MS = 20_000;

const ToastContext = createContext<(toast: ToastContent) => void>(() => {
  throw new Error('Expected a ToastProvider above but found none.');
});

/** Shows one short message, with an Undo where there is one; a new one takes its place. */
export function useToast(): (toast: ToastContent) => void {
  return useContext(ToastContext);
}

interface Shown {
  readonly toast: ToastContent | null;
  close(): void;
}

const ShownContext = createContext<Shown>({ toast: null, close: () => undefined });

export function ToastProvider({ children }: { children: ReactNode }): ReactElement {
  const [toast, setToast] = useState<ToastContent | null>(null);
  const close = useCallback(() => setToast(null), []);
  const shown = useMemo(() => ({ toast, close }), [toast, close]);
  return (
    <ToastContext value={setToast}>
      <ShownContext value={shown}>{children}</ShownContext>
    </ToastContext>
  );
}

/** Where the message stands: in the flow of the frame, so that it covers no work. */
export function ToastPlace(): ReactElement {
  const { toast, close } = useContext(ShownContext);
  const [pointed, setPointed] = useState(false);
  const [focused, setFocused] = useState(false);
  // Whoever points at it or has the focus in it is not hurried: the time begins anew when they leave.
  const held = toast !== null && (pointed || focused);
  useEffect(() => {
    if (!toast || held) return;
    const timer = setTimeout(close, toast.action ? OFFER_SHOWN_MS : MESSAGE_SHOWN_MS);
    return () => clearTimeout(timer);
  }, [toast, held, close]);
  // What is taken away while it is pointed at or focused never says that it was left.
  useEffect(() => {
    if (toast) return;
    setPointed(false);
    setFocused(false);
  }, [toast]);
  return (
    <div
      className={toast ? style['toast'] : undefined}
      role="status"
      onPointerEnter={() => setPointed(true)}
      onPointerLeave={() => setPointed(false)}
      onFocus={() => setFocused(true)}
      onBlur={() => setFocused(false)}
    >
      {toast && (
        <>
          <span className={style['message']}>{toast.message}</span>
          {toast.action && (
            <Button
              kind="quiet"
              onClick={() => {
                toast.action?.run();
                close();
              }}
            >
              {toast.action.label}
            </Button>
          )}
          <IconButton icon="close" label="Close message" onClick={close} />
        </>
      )}
    </div>
  );
}
