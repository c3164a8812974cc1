/** Lines for cut metal, to fill a shape with: `fill="url(#id)"`. Belongs in the `defs` of the drawing. */
export function Hatch({
  id,
  size,
  turn = 45,
  line = 'hair',
  pair = 0,
}: {
  id: string;
  size: number;
  turn?: number;
  line?: 'hair' | 'thin';
  /** Lines in pairs, so far apart. */
  pair?: number;
}) {
  return (
    <pattern
      id={id}
      width={size}
      height={size}
      patternUnits="userSpaceOnUse"
      patternTransform={`rotate(${turn})`}
    >
      <path d={`M0 0V${size}${pair > 0 ? `M${pair} 0V${size}` : ''}`} class={line} />
    </pattern>
  );
}
