import { createContext, type ReactElement, type ReactNode, useCallback, useContext, useEffect, useState } from 'react';
import { Button } from './Button.tsx';
import { IconButton } from './IconButton.tsx';
import style from './Toast.module.css';

export interface ToastContent {
  message: string;
  /** Offered as a button until the toast is closed or replaced: nobody is hurried. A toast without one goes by itself. */
  action?: { label: string; run: () => void };
}

const MESSAGE_SHOWN_MS = 6_000;

const ToastContext = createContext<(toast: ToastContent) => void>(() => {
  throw new Error('Expected a ToastProvider above but found none.');
});

/** Shows one short message at the foot of the window, with an Undo where there is one. */
export function useToast(): (toast: ToastContent) => void {
  return useContext(ToastContext);
}

export function ToastProvider({ children }: { children: ReactNode }): ReactElement {
  const [toast, setToast] = useState<ToastContent | null>(null);
  const close = useCallback(() => setToast(null), []);
  useEffect(() => {
    if (!toast || toast.action) return;
    const timer = setTimeout(close, MESSAGE_SHOWN_MS);
    return () => clearTimeout(timer);
  }, [toast, close]);
  return (
    <ToastContext value={setToast}>
      {children}
      <div className={style['place']} role="status">
        {toast && (
          <div className={style['toast']}>
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
          </div>
        )}
      </div>
    </ToastContext>
  );
}
