/** As a `ref`: what has just appeared is scrolled to, only where it does not show yet. */
export function bringIntoView(element: HTMLElement | null): void {
  element?.scrollIntoView({ block: 'nearest' });
}
