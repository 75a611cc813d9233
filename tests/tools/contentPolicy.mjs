/**
 * What the built page may load and run: its own files, and no script that is written into the page or made from a text. Styles may be
 * set by elements, as the panel of gains and printed pages do.
 */
const POLICY = {
  'default-src': "'none'",
  'script-src': "'self'",
  'worker-src': "'self'",
  'manifest-src': "'self'",
  'connect-src': "'self'",
  'style-src': "'self' 'unsafe-inline'",
  'img-src': "'self' data: blob:",
  'font-src': "'self' data:",
  'frame-src': "'self' blob:",
  'base-uri': "'none'",
  'form-action': "'none'",
};

/** Writes the policy into the built page. */
export function contentPolicy() {
  const content = Object.entries(POLICY)
    .map(([directive, sources]) => `${directive} ${sources}`)
    .join('; ');
  return {
    name: 'content-policy',
    apply: 'build',
    transformIndexHtml: () => [
      { tag: 'meta', attrs: { 'http-equiv': 'Content-Security-Policy', content }, injectTo: 'head-prepend' },
    ],
  };
}
