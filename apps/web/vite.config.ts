import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

/** The server that `npm start` runs; the development server hands its requests on to it. */
const api = process.env.COVELINE_API ?? 'http://127.0.0.1:4180';

export default defineConfig({
  plugins: [react()],
  resolve: { conditions: ['source', 'module', 'browser', 'development|production'] },
  build: { outDir: 'dist', emptyOutDir: true, chunkSizeWarningLimit: 1600 },
  server: { proxy: { '/api': api } },
});
