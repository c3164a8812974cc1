import type { Frame } from '../frame.ts';
import { Layout } from '../layout.tsx';

/** One sentence: what happened, and what to do. */
export function ErrorPage({ frame, title, sentence }: { frame: Frame; title: string; sentence: string }) {
  return (
    <Layout title={title} {...frame}>
      <h1>{title}</h1>
      <p class="why">{sentence}</p>
      <div class="actions">
        <a class="button first" href="/">
          Front page
        </a>
      </div>
    </Layout>
  );
}
