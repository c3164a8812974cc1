/** A QR code as rows of dark and light; null when there is no address to lead to. */
export type QrModules = {
  readonly size: number;
  readonly dark: readonly (readonly boolean[])[];
  readonly leadsTo: string;
} | null;

const QUIET = 4;

/** The code as one path, with the quiet zone the standard asks for (ISO/IEC 18004). Nothing where it would lead nowhere. */
export function Qr({ modules, label }: { modules: QrModules; label: string }) {
  if (modules === null) return null;
  const { size, dark, leadsTo } = modules;
  const path = dark
    .flatMap((row, y) => row.flatMap((on, x) => (on ? [`M${x + QUIET} ${y + QUIET}h1v1h-1z`] : [])))
    .join('');
  const side = size + 2 * QUIET;
  return (
    <figure class="qr">
      <svg
        viewBox={`0 0 ${side} ${side}`}
        role="img"
        aria-label={`${label}: QR code leading to ${leadsTo}`}
        shape-rendering="crispEdges"
      >
        <rect width={side} height={side} class="qr-light" />
        <path d={path} class="qr-dark" />
      </svg>
    </figure>
  );
}
