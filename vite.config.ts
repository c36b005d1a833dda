import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

const at = (path: string) => fileURLToPath(new URL(path, import.meta.url));

/** The app as a folder of files that need no other host: fonts, wasm and the worker lie beside the page. */
export default defineConfig({
  root: at('src/app'),
  base: './',
  plugins: [react()],
  // Packages that look for Node's global name find the browser's.
  define: { global: 'globalThis' },
  build: {
    outDir: at('dist/by-hand'),
    emptyOutDir: true,
    target: 'es2023',
    // Three and React make one file; splitting it would only delay the first picture.
    chunkSizeWarningLimit: 1500,
  },
  worker: { format: 'es' },
});
