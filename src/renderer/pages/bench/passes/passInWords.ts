export function passInWords(pass: number, observer: string): string {
  return `Pass ${pass}, ${observer === '' ? 'observer not named' : observer}`;
}

/** Which passes are not seen while this one is made, so that it tells how well the hand repeats. */
export function hiddenInWords(hidden: readonly number[]): string {
  const which = hidden.length === 1 ? `Pass ${hidden[0]} is` : `The ${hidden.length} passes before it are`;
  return `${which} hidden until you have placed the points.`;
}
