import preact from '@preact/preset-vite';
import { defineConfig, type Plugin } from 'vite';
import { offline } from './tools/offline.ts';

/**
 * The built page allows itself nothing but its own files. Phaser makes its default textures from data: URIs and
 * crashes without them. Left out of the dev server, whose hot reload needs inline styles and a socket.
 */
const POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' data: blob:",
  "font-src 'self'",
  "connect-src 'self'",
  "manifest-src 'self'",
  "worker-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
].join('; ');

const contentSecurityPolicy: Plugin = {
  name: 'content-security-policy',
  apply: 'build',
  transformIndexHtml: () => [
    { tag: 'meta', attrs: { 'http-equiv': 'Content-Security-Policy', content: POLICY }, injectTo: 'head-prepend' },
  ],
};

export default defineConfig({
  base: './',
  plugins: [preact(), contentSecurityPolicy, offline()],
  build: {
    target: 'es2022',
    // tools/size-budget.mjs reads the manifest to tell what the shell loads at once from what it loads later.
    manifest: true,
    // A data: URI would need `font-src data:` and so on in the policy.
    assetsInlineLimit: 0,
    chunkSizeWarningLimit: 1500,
    rolldownOptions: {
      output: {
        codeSplitting: { groups: [{ name: 'phaser', test: /[\\/]node_modules[\\/]phaser[\\/]/ }] },
      },
    },
  },
  worker: {
    format: 'es',
    rolldownOptions: {
      output: { entryFileNames: 'assets/worker-[name]-[hash].js', chunkFileNames: 'assets/worker-[name]-[hash].js' },
    },
  },
  server: { host: '127.0.0.1' },
  preview: { host: '127.0.0.1' },
});
