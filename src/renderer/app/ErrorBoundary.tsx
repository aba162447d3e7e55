import { Component, type ReactNode } from 'react';
import { Button } from '../parts/Button.tsx';
import { FailureNotice } from '../parts/Notice.tsx';
import style from './ErrorBoundary.module.css';

interface Props {
  /** A change of it (another page) clears the error. */
  place: string;
  children: ReactNode;
}

/** Keeps a defect on one page from taking the others with it. */
export class ErrorBoundary extends Component<Props, { error: unknown; place: string }> {
  override state: { error: unknown; place: string } = { error: null, place: this.props.place };

  static getDerivedStateFromError(error: unknown): { error: unknown } {
    return { error };
  }

  static getDerivedStateFromProps(props: Props, state: { place: string }): { error: null; place: string } | null {
    return props.place === state.place ? null : { error: null, place: props.place };
  }

  override render(): ReactNode {
    if (this.state.error === null) return this.props.children;
    return (
      <div className={style['place']}>
        <FailureNotice error={this.state.error} action={<Button onClick={() => window.location.reload()}>Reload the window</Button>} />
      </div>
    );
  }
}
