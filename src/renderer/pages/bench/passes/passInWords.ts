export function passInWords(pass: number, observer: string): string {
  return `Pass ${pass}, ${observer === '' ? 'observer not named' : observer}`;
}
