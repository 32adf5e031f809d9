import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

/** The engraver asks for it only when it finds itself in Node. */
const nodeOnly = ['node:module'];

// Built into dist/app and served by our own server; no inline script or style survives, so that the content security
// policy can forbid both.
export default defineConfig({
  root: import.meta.dirname,
  plugins: [react()],
  resolve: { conditions: ['levare-source', 'browser', 'import', 'default'] },
  worker: { format: 'es', rolldownOptions: { external: nodeOnly } },
  build: {
    outDir: '../../dist/app',
    emptyOutDir: true,
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    rolldownOptions: {
      external: nodeOnly,
      treeshake: {
        // The pure modules do nothing by being loaded, so a screen takes only what it uses of them.
        moduleSideEffects: [
          { test: /src\/(core|music|planning|listening|engraving|sound|contract)\//, sideEffects: false },
        ],
      },
    },
  },
});
