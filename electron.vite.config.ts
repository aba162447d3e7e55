import { resolve } from 'node:path';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'electron-vite';

const source = (path: string) => resolve(import.meta.dirname, 'src', path);

/** main: both shells, sharing one core; preload: the bridge, CommonJS because a sandboxed preload must be; renderer: the app. */
export default defineConfig({
  main: {
    build: {
      outDir: 'out/main',
      rollupOptions: {
        input: {
          desktop: source('desktop/main.ts'),
          loopback: source('loopback/main.ts'),
          heicDecoding: source('images/heicDecoding.ts'),
          scaleFinding: source('images/scaleFinding.ts'),
          fiducialDetecting: source('images/fiducialDetecting.ts'),
          coinLooking: source('images/coinLooking.ts'),
        },
        // All in one folder: a module finds the program of its thread or process beside itself, built or not.
        output: { entryFileNames: '[name].js', chunkFileNames: '[name]-[hash].js' },
      },
    },
  },
  preload: {
    build: {
      outDir: 'out/preload',
      rollupOptions: {
        input: { bridge: source('desktop/bridge.ts') },
        output: { format: 'cjs', entryFileNames: '[name].cjs' },
      },
    },
  },
  renderer: {
    root: source('renderer'),
    plugins: [react()],
    build: {
      outDir: resolve(import.meta.dirname, 'out/renderer'),
      // The content security policy admits no data: URLs, so nothing may be inlined.
      assetsInlineLimit: 0,
      rollupOptions: { input: { index: source('renderer/index.html') } },
    },
  },
});
