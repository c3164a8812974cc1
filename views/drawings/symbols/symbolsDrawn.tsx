import { Hatch } from '../hatch.tsx';
import { COVER, LENGTHS, SLAB } from './coverSymbols.tsx';
import { FACE, FACING, PLANE, ROUND, SCALLOPS, SURE } from './faceSymbols.tsx';
import { JOINT, STACK, THREAD } from './stackSymbols.tsx';
import { SignInWords, type SymbolDrawing } from './symbolParts.tsx';

/** Which calculations each drawing stands beside; it names only symbols that mean the same in all of them. */
const BESIDE: readonly (readonly [SymbolDrawing, string])[] = [
  [FACE, 'cover/toolPlane cover/cutDialled cover/faceCut cover/wallsLeftBy'],
  [
    PLANE,
    'cover/flatnessLeastSquares cover/flatnessMinimumZone cover/tiltOverTrack measuring/leastSquaresPlane',
  ],
  [PLANE, 'measuring/minimumZone cover/dialledIn'],
  [ROUND, 'cover/measuredStations cover/stationLayout cover/betweenStations cover/rings'],
  [FACING, 'cover/facingTime cover/spindleSpeed cover/cutPlan'],
  [SCALLOPS, 'cover/theoreticalRoughness'],
  [SURE, 'measuring/conformanceProbability measuring/sureMargin cover/wallUncertainty cover/whatWouldSettle'],
  [SURE, 'measuring/normalShare'],
  [LENGTHS, 'cover/knockOnLengths'],
  [STACK, 'studs/reach studs/protrusion studs/threadEngagement studs/nutClamps studs/tipClearance'],
  [
    STACK,
    'studs/pilotEntersHole studs/pilotLinesUp studs/stackSum studs/gapWanted studs/studWanted studs/fits',
  ],
  [
    JOINT,
    'studs/preload studs/slipTorque studs/bearingPressure studs/nutSeat studs/studShear studs/torqueWindow',
  ],
  [JOINT, 'studs/nutProof studs/proofShare studs/clampedResilience studs/studResilience studs/embeddingLoss'],
  [THREAD, 'studs/metricGeometry studs/unifiedGeometry studs/tensileStressArea studs/threadMeasured'],
  [THREAD, 'studs/threadShearAreas studs/neededEngagement studs/wornThread'],
  [
    COVER,
    'bending/coverForces bending/pressurePeak bending/padsOverTrack bending/padPatch bending/sideWallSpring',
  ],
  [
    COVER,
    'bending/coverModel bending/bendCover bending/conformingPiston bending/rigidPiston bending/solveCover',
  ],
  [SLAB, 'heat/heatCover heat/slabStep heat/slipFlux heat/slipRise heat/peakTime'],
];

const DRAWINGS: ReadonlyMap<string, SymbolDrawing> = new Map(
  BESIDE.flatMap(([drawing, names]) => names.split(' ').map((name) => [name, drawing] as const)),
);

/** The calculations that have a drawing. */
export const DRAWN_CALCULATIONS: readonly string[] = [...DRAWINGS.keys()];

/** The drawing that names the symbols of a calculation, `cover/toolPlane`; null where there is none. */
export function symbolsOf(calculation: string): SymbolDrawing | null {
  return DRAWINGS.get(calculation) ?? null;
}

/** A drawing, and under it what its symbols stand for. */
export function SymbolsDrawn({ drawing: { title, names, height, Draw } }: { drawing: SymbolDrawing }) {
  return (
    <>
      <svg viewBox={`0 0 352 ${height}`} class="stud-drawing" role="img" aria-labelledby="symbols-title">
        <title id="symbols-title">{title}</title>
        <defs>
          <Hatch id="symbols-hatch" size={8} />
        </defs>
        <Draw hatch="symbols-hatch" />
      </svg>
      <figcaption>
        {title}
        <dl class="symbol-names">
          {names.map(([symbol, words]) => (
            <div>
              <dt>
                <SignInWords of={symbol} />
              </dt>
              <dd>{words}</dd>
            </div>
          ))}
        </dl>
      </figcaption>
    </>
  );
}
