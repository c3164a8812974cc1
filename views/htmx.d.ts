import type { Signalish } from 'preact';

type Hx = Signalish<string | undefined>;

declare module 'preact' {
  interface DOMAttributes<Target extends EventTarget> {
    'hx-get'?: Hx;
    'hx-post'?: Hx;
    'hx-trigger'?: Hx;
    'hx-target'?: Hx;
    'hx-swap'?: Hx;
    'hx-swap-oob'?: Hx;
    'hx-select'?: Hx;
    'hx-include'?: Hx;
    'hx-vals'?: Hx;
    'hx-sync'?: Hx;
    'hx-indicator'?: Hx;
    'hx-disabled-elt'?: Hx;
    'hx-push-url'?: Hx;
    'hx-confirm'?: Hx;
    'hx-headers'?: Hx;
    'hx-params'?: Hx;
    'hx-preserve'?: Hx;
    /** preact drops a bare `false`; htmx reads the word. */
    'hx-boost'?: 'true' | 'false';
  }
}
