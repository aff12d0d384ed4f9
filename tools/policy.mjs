const rules = [
  "default-src 'self'",
  "img-src 'self' data: blob:",
  "worker-src 'self' blob:",
  "object-src 'none'",
  "base-uri 'none'",
  "form-action 'none'",
];

/** What the page may load and run, as written into the page itself: nothing inline, nothing evaluated, nothing foreign. */
export const pagePolicy = rules.join('; ');

/** The same as sent by our server; `frame-ancestors` is ignored in a page, so only the header can say it. */
export const servedPolicy = [...rules, "frame-ancestors 'none'"].join('; ');
