/** As much of libheif's JavaScript face as we use; the package brings no types for it. */
declare module 'libheif-js/wasm-bundle.js' {
  interface HeifImage {
    get_width(): number;
    get_height(): number;
    is_primary(): boolean;
    /** Answers null when the picture can't be decoded. */
    display(
      target: { data: Uint8ClampedArray<ArrayBuffer>; width: number; height: number },
      done: (shown: { data: Uint8ClampedArray<ArrayBuffer> } | null) => void,
    ): void;
  }
  const libheif: { HeifDecoder: new () => { decode(file: Uint8Array): HeifImage[] } };
  export default libheif;
}
