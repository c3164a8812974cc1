/** Lines for cut metal, to fill a shape with: `fill="url(#id)"`. Belongs in the `defs` of the drawing. */
export function Hatch({
  id,
  size,
  turn = 45,
  line = 'hair',
}: {
  id: string;
  size: number;
  turn?: number;
  line?: 'hair' | 'thin';
}) {
  return (
    <pattern
      id={id}
      width={size}
      height={size}
      patternUnits="userSpaceOnUse"
      patternTransform={`rotate(${turn})`}
    >
      <path d={`M0 0V${size}`} class={line} />
    </pattern>
  );
}
