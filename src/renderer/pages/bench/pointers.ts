import type { ViewPoint } from '../../bench/view.ts';

/** Lines of a wheel that counts in lines, in CSS pixels. */
const LINE_CSS = 16;

/** Where an event happened, from the top left corner of the element. Pointer positions may lie between pixels. */
export function placeIn(element: Element, event: { readonly clientX: number; readonly clientY: number }): ViewPoint {
  const { left, top } = element.getBoundingClientRect();
  return { xCss: event.clientX - left, yCss: event.clientY - top };
}

export function wheelCss(event: WheelEvent): number {
  return event.deltaMode === WheelEvent.DOM_DELTA_PIXEL ? event.deltaY : event.deltaY * LINE_CSS;
}
